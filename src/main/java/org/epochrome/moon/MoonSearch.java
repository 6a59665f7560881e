package org.epochrome.moon;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Gaussian;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.moon.MoonFit.Found;
import org.epochrome.turn.Rotation;

/**
 * Looks for compact features that do not turn with the globe: moons and shadows that no table told. In each frame the places
 * where the light differs most, on the scale of a moon, from that around them; of these the ones on a straight course through
 * the frames, if turning with the globe does not explain them better.
 */
final class MoonSearch {
    /** Radii that a feature may have, equatorial radii of the planet. */
    private static final double[] RADII = {0.008, 0.02, 0.035};

    /** Radii that are tried to size one: the smallest, each against the one before, and how many; up to Triton's and some more. */
    private static final double SMALLEST = 0.004;

    private static final double SIZE_STEP = 1.12;
    private static final int SIZES = 27;
    private static final double GROUND = 0.03;
    /** Difference from the surroundings that stands out: on the globe, near its limb, off it (also in noises). */
    private static final double ON_GLOBE = 0.06;

    private static final double AT_LIMB = 0.1;
    private static final double ON_SKY = 0.004;
    private static final double NOISES = 8;
    /** Outer edge of Saturn's rings, equatorial radii, and how far off them a moon must be, blurs. */
    private static final double RINGS = 2.28;

    private static final double CLEAR_BLURS = 4;
    private static final int MOST_PER_FRAME = 24;
    /** Light around a feature that is kept: blurs, and equatorial radii. */
    private static final double REACH_BLURS = 9;

    private static final double REACH = 0.08;
    /** Part of what is not smooth ground that a feature must explain, on the globe and off it. */
    private static final double COMPACT = 0.5;

    private static final double COMPACT_ON_SKY = 0.3;
    /** Fastest course, equatorial radii per second: more than any large moon's. */
    private static final double FASTEST = 1.2 / 3600;

    private static final double CLOSE_PX = 1.5;
    private static final double STRAIGHT_PX = 0.7;
    /** Part of the frames, and number of them, that must show a feature. */
    private static final double MOST_FRAMES = 0.6;

    private static final int LEAST_FRAMES = 3;
    /** Light of the ground that a shadow leaves at most. */
    private static final double SHADOW_LIGHT = 0.2;
    /** How much light below zero counts against a radius. */
    private static final double BLACKER = 1000;

    private final List<MoonFrame> frames;
    private final List<Rotation> rotations;
    private final View epochView;

    MoonSearch(List<MoonFrame> frames, List<Rotation> rotations, View epochView) {
        this.frames = frames;
        this.rotations = rotations;
        this.epochView = epochView;
    }

    /** A feature in a frame, and the light around it. */
    private record Spotted(int frame, SkyPoint place, Found fit, MoonField around) {}

    /** Whether a body has moons that such frames can show. */
    static boolean worthwhile(Body body) {
        return switch (body) {
            case JUPITER, SATURN, URANUS, NEPTUNE -> true;
            case MERCURY, VENUS, MARS -> false;
        };
    }

    /** Features on straight courses, none of them near the ones that are known. */
    List<Companion> find(IntFunction<MoonField> fields, List<Companion> known, Progress progress) {
        List<List<Spotted>> spotted = IntStream.range(0, frames.size())
                .parallel()
                .mapToObj(i -> {
                    progress.check();
                    return spotted(i, fields.apply(i), known);
                })
                .toList();
        List<List<Spotted>> left = new ArrayList<>();
        spotted.forEach(s -> left.add(new ArrayList<>(s)));
        List<Companion> found = new ArrayList<>();
        for (Optional<List<Spotted>> track = longest(left); track.isPresent(); track = longest(left)) {
            track.get().forEach(s -> left.get(s.frame).remove(s));
            companion(track.get()).ifPresent(found::add);
        }
        return found;
    }

    private List<Spotted> spotted(int index, MoonField field, List<Companion> known) {
        MoonFrame frame = field.frame();
        Plane fine = residual(field);
        Plane plane = Gaussian.blur(fine, frame.blurPx());
        Plane ground = Gaussian.blur(fine, Math.max(3 * frame.blurPx(), GROUND * frame.radiusPx()));
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] -= ground.data()[i];
        }
        List<double[]> peaks = peaks(field, plane);
        peaks.sort(Comparator.comparingDouble(p -> -p[2]));
        List<Spotted> result = new ArrayList<>();
        for (double[] peak : peaks.subList(0, Math.min(MOST_PER_FRAME, peaks.size()))) {
            SkyPoint place = frame.place(peak[0], peak[1]);
            if (known.stream().anyMatch(k -> near(k, frame, place))) {
                continue;
            }
            MoonField around = field.around(peak[0], peak[1], REACH_BLURS * frame.blurPx() + REACH * frame.radiusPx());
            Found best = null;
            for (double radius : RADII) {
                Companion still = new Companion(Optional.empty(), false, radius, 0, false, utc -> place);
                Found fit = new MoonFit(around, still, 0).free(0);
                best = best == null || fit.explained() > best.explained() ? fit : best;
            }
            boolean sky = frame.elliptic(peak[0], peak[1]) > 1 + 3 * frame.blurPx() / frame.radiusPx();
            if (best.explained() > (sky ? COMPACT_ON_SKY : COMPACT)
                    && Math.abs(best.contrast(false)) > MoonTrack.LEAST_CONTRAST) {
                result.add(new Spotted(index, best.place(), best, around));
            }
        }
        return result;
    }

    private static boolean near(Companion companion, MoonFrame frame, SkyPoint place) {
        double reach = companion.radius() + 2.5 * frame.blurPx() / frame.radiusPx();
        return companion.at(frame.mid()).minus(place).length() < reach;
    }

    private static Plane residual(MoonField frame) {
        Plane residual = frame.light().copy();
        for (int i = 0; i < residual.data().length; i++) {
            float value = residual.data()[i] - frame.even().data()[i];
            residual.data()[i] = Float.isNaN(value) ? 0 : value;
        }
        return residual;
    }

    private static List<double[]> peaks(MoonField field, Plane plane) {
        MoonFrame frame = field.frame();
        List<double[]> peaks = new ArrayList<>();
        // other globes show no transits that such frames could tell from markings
        boolean onGlobe = frame.aspect().body() == Body.JUPITER;
        int reach = (int) Math.ceil(Math.max(3, 1.5 * frame.blurPx()));
        double sky = Math.max(
                ON_SKY,
                NOISES * frame.fit().noise() / frame.fit().brightness() / (3.5 * Math.max(0.3, frame.blurPx())));
        int margin = (int) Math.ceil(4 * frame.blurPx()) + 2;
        for (int y = margin; y < plane.height() - margin; y++) {
            for (int x = margin; x < plane.width() - margin; x++) {
                double value = Math.abs(plane.at(x, y));
                if (value < sky || !highest(plane, x, y, reach)) {
                    continue;
                }
                double beyondPx = (frame.elliptic(x, y) - 1) * frame.radiusPx();
                boolean dark = field.even().at(x, y) < 0.01 && beyondPx > 0;
                double least = Math.abs(beyondPx) < 3 * frame.blurPx() ? AT_LIMB : dark ? sky : ON_GLOBE;
                boolean looked = dark ? plane.at(x, y) > 0 && clearOfRings(frame, x, y) : onGlobe;
                if (value > least && looked) {
                    peaks.add(new double[] {x, y, value / least});
                }
            }
        }
        return peaks;
    }

    private static boolean clearOfRings(MoonFrame frame, int x, int y) {
        if (frame.fit().rings().isNone()) {
            return true;
        }
        double margin = CLEAR_BLURS * frame.blurPx() / frame.radiusPx();
        double side = frame.view().side(x, y) / (RINGS + margin);
        double pole = frame.view().pole(x, y)
                / (RINGS * Math.abs(Math.sin(frame.view().globe().tilt())) + margin);
        return Math.hypot(side, pole) > 1;
    }

    private static boolean highest(Plane plane, int x, int y, int reach) {
        double value = Math.abs(plane.at(x, y));
        for (int j = Math.max(0, y - reach); j <= Math.min(plane.height() - 1, y + reach); j++) {
            for (int i = Math.max(0, x - reach); i <= Math.min(plane.width() - 1, x + reach); i++) {
                double other = Math.abs(plane.at(i, j));
                if (other > value || (other == value && (j < y || (j == y && i < x)))) {
                    return false;
                }
            }
        }
        return true;
    }

    /** The straight course through most frames, the straightest of these. */
    private Optional<List<Spotted>> longest(List<List<Spotted>> left) {
        int least = Math.max(Math.min(LEAST_FRAMES, frames.size()), (int) Math.ceil(MOST_FRAMES * frames.size()));
        List<Spotted> best = List.of();
        double bestOff = Double.POSITIVE_INFINITY;
        for (int a = 0; a < left.size(); a++) {
            for (int b = 0; b < left.size(); b++) {
                double seconds = Companion.secondsSince(
                        frames.get(a).mid(), frames.get(b).mid());
                if (seconds <= 0) {
                    continue;
                }
                for (Spotted from : left.get(a)) {
                    for (Spotted to : left.get(b)) {
                        SkyPoint speed = to.place.minus(from.place).times(1 / seconds);
                        if (speed.length() > FASTEST) {
                            continue;
                        }
                        List<Spotted> track = along(left, from, speed);
                        double off = offPx(track, from, speed);
                        if (track.size() >= least
                                && (track.size() > best.size() || (track.size() == best.size() && off < bestOff))) {
                            best = track;
                            bestOff = off;
                        }
                    }
                }
            }
        }
        return best.isEmpty() ? Optional.empty() : Optional.of(best);
    }

    private SkyPoint expected(int frame, Spotted from, SkyPoint speed) {
        double t = Companion.secondsSince(
                frames.get(from.frame).mid(), frames.get(frame).mid());
        return from.place.plus(speed.times(t));
    }

    private List<Spotted> along(List<List<Spotted>> left, Spotted from, SkyPoint speed) {
        List<Spotted> track = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            SkyPoint expected = expected(i, from, speed);
            double radius = frames.get(i).radiusPx();
            left.get(i).stream()
                    .filter(s -> s.place.minus(expected).length() * radius < CLOSE_PX)
                    .min(Comparator.comparingDouble(s -> s.place.minus(expected).length()))
                    .ifPresent(track::add);
        }
        return track;
    }

    private double offPx(List<Spotted> track, Spotted from, SkyPoint speed) {
        double sum = 0;
        for (Spotted s : track) {
            double off = s.place.minus(expected(s.frame, from, speed)).length()
                    * frames.get(s.frame).radiusPx();
            sum += off * off;
        }
        return Math.sqrt(sum / Math.max(1, track.size()));
    }

    /** What moves along a track, unless it turns with the globe. */
    private Optional<Companion> companion(List<Spotted> track) {
        Spotted first = track.get(0);
        Companion still = new Companion(Optional.empty(), false, RADII[1], 0, false, utc -> first.place);
        List<Found> places = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            int index = i;
            places.add(track.stream()
                    .filter(s -> s.frame == index)
                    .map(Spotted::fit)
                    .findFirst()
                    .orElse(null));
        }
        MoonTrack course = MoonTrack.straight(still, frames, places);
        if (course.plain().length < track.size()
                || course.offPx() > STRAIGHT_PX
                || course.turns(epochView, rotations)) {
            return Optional.empty();
        }
        Companion moving = course.companion();
        Companion sized = sized(moving, track);
        boolean shadow = track.stream()
                .map(s -> new MoonFit(s.around, sized, 0).held())
                .allMatch(f -> f.level() < SHADOW_LIGHT * f.ground());
        return Optional.of(new Companion(Optional.empty(), shadow, sized.radius(), 0, false, sized.course()));
    }

    /** The radius that leaves least in all frames of a track. */
    private static Companion sized(Companion companion, List<Spotted> track) {
        double[] left = IntStream.range(0, SIZES)
                .mapToDouble(k -> left(companion.sized(size(k)), track))
                .toArray();
        int best = IntStream.range(1, SIZES - 1)
                .boxed()
                .min(Comparator.comparingDouble(k -> left[k]))
                .orElseThrow();
        double slope = 0.5 * (left[best + 1] - left[best - 1]);
        double bend = left[best + 1] - 2 * left[best] + left[best - 1];
        double between = bend > 0 ? Math.max(-1, Math.min(1, -slope / bend)) : 0;
        return companion.sized(size(best + between));
    }

    private static double size(double step) {
        return SMALLEST * Math.pow(SIZE_STEP, step);
    }

    /** What a companion of a size leaves unexplained, as a logarithm. */
    private static double left(Companion companion, List<Spotted> track) {
        double left = 0;
        for (Spotted s : track) {
            Found fit = new MoonFit(s.around, companion, 0).held();
            // nothing is darker than black: a disk too small for its darkness
            left += fit.level() < 0 ? BLACKER * fit.level() * fit.level() : 0;
            left += Math.log(1 - Math.min(fit.explained(), 0.99999));
        }
        return left;
    }
}
