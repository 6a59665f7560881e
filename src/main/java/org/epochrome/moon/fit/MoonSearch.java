package org.epochrome.moon.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.epochrome.disk.View;
import org.epochrome.job.Progress;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonOrShadow;
import org.epochrome.moon.MoonTrack;
import org.epochrome.moon.SkyPoint;
import org.epochrome.moon.SpotFit;
import org.epochrome.turn.Rotation;

/**
 * Looks for compact features that do not turn with the globe: moons and shadows that no ephemeris predicts. Of what stands out in the
 * frames the ones on a straight course, if turning with the globe does not explain them better.
 */
public final class MoonSearch {
    /** A radius to begin with, equatorial radii of the planet. */
    private static final double USUAL_RADIUS = 0.02;
    /** Fastest course, equatorial radii per second: more than any large moon's. */
    private static final double FASTEST = 1.2 / 3600;

    private static final double CLOSE_PX = 1.5;
    private static final double STRAIGHT_PX = 0.7;
    /** Part of the frames, and number of them, that must show a feature. */
    private static final double MOST_FRAMES = 0.6;

    private static final int LEAST_FRAMES = 3;
    /** Light of the ground that a shadow leaves at most. */
    private static final double SHADOW_LIGHT = 0.2;

    private final List<MoonFrame> frames;
    private final List<Rotation> rotations;
    private final View epochView;

    public MoonSearch(List<MoonFrame> frames, List<Rotation> rotations, View epochView) {
        this.frames = frames;
        this.rotations = rotations;
        this.epochView = epochView;
    }

    /** Features on straight courses, none of them near the ones that are known. */
    public List<MoonOrShadow> find(IntFunction<MoonField> fields, List<MoonOrShadow> known, Progress progress) {
        List<List<SpotCandidate>> candidates = IntStream.range(0, frames.size())
                .parallel()
                .mapToObj(i -> {
                    progress.check();
                    return SpotCandidate.in(i, fields.apply(i), known);
                })
                .toList();
        List<List<SpotCandidate>> left = new ArrayList<>();
        candidates.forEach(s -> left.add(new ArrayList<>(s)));
        List<MoonOrShadow> found = new ArrayList<>();
        for (Optional<List<SpotCandidate>> track = longest(left); track.isPresent(); track = longest(left)) {
            track.get().forEach(s -> left.get(s.frame()).remove(s));
            companion(track.get()).ifPresent(found::add);
        }
        return found;
    }

    /** The straight course through most frames, the straightest of these. */
    private Optional<List<SpotCandidate>> longest(List<List<SpotCandidate>> left) {
        int least = Math.max(Math.min(LEAST_FRAMES, frames.size()), (int) Math.ceil(MOST_FRAMES * frames.size()));
        List<SpotCandidate> best = List.of();
        double bestOff = Double.POSITIVE_INFINITY;
        for (int a = 0; a < left.size(); a++) {
            for (int b = 0; b < left.size(); b++) {
                double seconds = MoonOrShadow.secondsSince(
                        frames.get(a).mid(), frames.get(b).mid());
                if (seconds <= 0) {
                    continue;
                }
                for (SpotCandidate from : left.get(a)) {
                    for (SpotCandidate to : left.get(b)) {
                        SkyPoint speed = to.place().minus(from.place()).times(1 / seconds);
                        if (speed.length() > FASTEST) {
                            continue;
                        }
                        List<SpotCandidate> track = along(left, from, speed);
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

    private SkyPoint expected(int frame, SpotCandidate from, SkyPoint speed) {
        double t = MoonOrShadow.secondsSince(
                frames.get(from.frame()).mid(), frames.get(frame).mid());
        return from.place().plus(speed.times(t));
    }

    private List<SpotCandidate> along(List<List<SpotCandidate>> left, SpotCandidate from, SkyPoint speed) {
        List<SpotCandidate> track = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            SkyPoint expected = expected(i, from, speed);
            double radius = frames.get(i).radiusPx();
            left.get(i).stream()
                    .filter(s -> s.place().minus(expected).length() * radius < CLOSE_PX)
                    .min(Comparator.comparingDouble(
                            s -> s.place().minus(expected).length()))
                    .ifPresent(track::add);
        }
        return track;
    }

    private double offPx(List<SpotCandidate> track, SpotCandidate from, SkyPoint speed) {
        double sum = 0;
        for (SpotCandidate s : track) {
            double off = s.place().minus(expected(s.frame(), from, speed)).length()
                    * frames.get(s.frame()).radiusPx();
            sum += off * off;
        }
        return Math.sqrt(sum / Math.max(1, track.size()));
    }

    /** What moves along a track, unless it turns with the globe. */
    private Optional<MoonOrShadow> companion(List<SpotCandidate> track) {
        SpotCandidate first = track.get(0);
        MoonOrShadow still = MoonOrShadow.found(false, USUAL_RADIUS, utc -> first.place());
        List<SpotFit> places = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            int index = i;
            places.add(track.stream()
                    .filter(s -> s.frame() == index)
                    .map(SpotCandidate::fit)
                    .findFirst()
                    .orElse(null));
        }
        MoonTrack course = MoonTrack.straight(still, frames, places);
        if (course.plain().length < track.size()
                || course.offPx() > STRAIGHT_PX
                || course.takesTooLong()
                || course.turns(epochView, rotations)) {
            return Optional.empty();
        }
        MoonOrShadow moving = course.companion();
        MoonOrShadow sized =
                MoonSize.sized(moving, track.stream().map(SpotCandidate::around).toList());
        boolean shadow = track.stream()
                .map(s -> new MoonFit(s.around(), sized, 0).held())
                .allMatch(f -> f.level() < SHADOW_LIGHT * f.ground());
        return Optional.of(MoonOrShadow.found(shadow, sized.radius(), sized.course()));
    }
}
