package org.epochrome.session;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.RoundSpot;
import org.epochrome.job.Progress;
import org.epochrome.job.Rows;
import org.epochrome.session.MoonFit.Found;
import org.epochrome.turn.Rotation;
import org.epochrome.turn.Turned;

/**
 * The moons and shadows in a session's frames: found, taken out before the globe is turned, and laid where they stand at the
 * epoch.
 */
final class Moons {
    /** How far the ephemeris may be off, arcsec. */
    private static final double SEARCH_ARCSEC = 0.7;
    /** Places of a moon that is there agree with its course so closely: pixels, or a part of its radius. */
    private static final double AGREE_PX = 0.7;

    private static final double AGREE_RADII = 0.15;
    /** Part of the frames in which a moon must be plain. */
    private static final double MOST_FRAMES = 0.5;
    /** Cover of a pixel between which trust in what lies below a moon falls from full to none. */
    private static final double CLEAR = 0.03;

    private static final double COVERED = 0.5;

    private final Schedule schedule;
    private final Turning turning;
    private final List<MoonFrame> frames;
    private final List<MoonTrack> tracks;

    private Moons(Schedule schedule, Turning turning, List<MoonFrame> frames, List<MoonTrack> tracks) {
        this.schedule = schedule;
        this.turning = turning;
        this.frames = frames;
        this.tracks = tracks;
    }

    /** No moons. */
    static Moons none(Schedule schedule, Turning turning) {
        return new Moons(schedule, turning, List.of(), List.of());
    }

    /**
     * The moons that the frames show: those that the ephemeris expects, and whatever else does not turn with the globe.
     *
     * @param planes pixels of the exposures
     * @param fits their disks
     */
    static Moons find(
            Schedule schedule, Turning turning, List<Plane> planes, List<FittedDisk> fits, Progress progress) {
        List<MoonFrame> frames = IntStream.range(0, planes.size())
                .parallel()
                .mapToObj(i -> MoonFrame.of(schedule.exposures().get(i), planes.get(i), fits.get(i)))
                .toList();
        List<Instant> instants =
                new ArrayList<>(frames.stream().map(MoonFrame::mid).sorted().toList());
        instants.add(schedule.epoch());
        instants.sort(Comparator.naturalOrder());
        Moons moons = new Moons(schedule, turning, frames, List.of());
        TurningWitness witness = moons.witness(fits);
        List<MoonTrack> tracks = new ArrayList<>();
        for (Companion expected : MoonsExpected.of(schedule.aspect().body(), instants)) {
            progress.check();
            MoonTrack track = moons.track(expected, frames, false, moons.searchPx());
            if (moons.isThere(track, witness)) {
                tracks.add(track);
            }
        }
        for (Companion found : new MoonSearch(frames, witness).find(tracks)) {
            progress.check();
            tracks.add(moons.track(found, frames, true, 2));
        }
        return new Moons(schedule, turning, frames, moons.again(tracks));
    }

    boolean any() {
        return !tracks.isEmpty();
    }

    private TurningWitness witness(List<FittedDisk> fits) {
        List<Rotation> rotations = schedule.exposures().stream()
                .map(e -> turning.rotationOfGlobe(e.aspect()))
                .toList();
        return new TurningWitness(turning.viewAtEpoch(fits.get(schedule.reference())), rotations);
    }

    private double searchPx() {
        Disk disk = frames.get(schedule.reference()).fit().disk();
        return SEARCH_ARCSEC / Sky.arcsecPerPx(schedule.aspect(), disk);
    }

    private MoonTrack track(Companion companion, List<MoonFrame> in, boolean straight, double searchPx) {
        List<Found> free = IntStream.range(0, in.size())
                .parallel()
                .mapToObj(i -> fit(companion, in.get(i), searchPx))
                .collect(java.util.stream.Collectors.toCollection(ArrayList::new));
        return MoonTrack.through(companion, in, free, straight);
    }

    /** A fit, or null if the frame does not hold the companion. */
    private static Found fit(Companion companion, MoonFrame frame, double searchPx) {
        SkyPoint place = companion.at(frame.mid());
        double margin = companion.radius() * frame.radiusPx() + 3 * frame.blurPx() + searchPx;
        return frame.holds(place, margin) ? new MoonFit(frame, companion, searchPx).free(searchPx) : null;
    }

    private boolean isThere(MoonTrack track, TurningWitness witness) {
        Companion companion = track.companion();
        long held = track.free().stream().filter(f -> f != null).count();
        long plain = track.free().stream()
                .filter(f -> MoonTrack.plain(f, companion.shadow()))
                .count();
        double radius = companion.radius() * frames.get(schedule.reference()).radiusPx();
        return plain >= Math.max(2, MOST_FRAMES * held)
                && witness.offPx(companion, frames, track.free()) < Math.max(AGREE_PX, AGREE_RADII * radius)
                && !witness.turns(companion, frames, track.free());
    }

    /** Each fitted once more in frames without the others. */
    private List<MoonTrack> again(List<MoonTrack> found) {
        if (found.size() < 2) {
            return found;
        }
        List<MoonTrack> result = new ArrayList<>();
        for (int k = 0; k < found.size(); k++) {
            MoonTrack track = found.get(k);
            List<MoonTrack> others = new ArrayList<>(found);
            others.remove(k);
            List<MoonFrame> bare = IntStream.range(0, frames.size())
                    .parallel()
                    .mapToObj(i -> frames.get(i).with(bare(i, others)))
                    .toList();
            MoonTrack more =
                    track(track.companion(), bare, track.companion().name().isEmpty(), 2);
            result.add(new MoonTrack(more.companion(), track.predicted(), more.free(), more.held()));
        }
        return result;
    }

    /** The planes without the moons: what lies below is seen through their rims, or filled smoothly. */
    List<Plane> healed(List<Plane> planes) {
        return IntStream.range(0, planes.size())
                .parallel()
                .mapToObj(i -> {
                    Plane light = bare(i, tracks);
                    FittedDisk fit = frames.get(i).fit();
                    for (int k = 0; k < light.data().length; k++) {
                        light.data()[k] = (float) (fit.background() + fit.brightness() * light.data()[k]);
                    }
                    return light;
                })
                .toList();
    }

    private Plane bare(int index, List<MoonTrack> without) {
        MoonFrame frame = frames.get(index);
        Plane light = frame.light().copy();
        for (MoonTrack track : without) {
            Found held = track.held().get(index);
            if (held == null) {
                continue;
            }
            MoonFit fit = new MoonFit(frame, track.companion(), 0);
            SkyPoint place = held.place();
            double reach = fit.reachPx();
            for (int y = low(frame.y(place) - reach); y <= high(frame.y(place) + reach, light.height()); y++) {
                for (int x = low(frame.x(place) - reach); x <= high(frame.x(place) + reach, light.width()); x++) {
                    double cover = fit.cover(x, y, place);
                    if (cover < 1e-4) {
                        continue;
                    }
                    double seen = track.companion().shadow()
                            ? light.at(x, y) / (1 - (1 - held.level()) * Math.min(cover, COVERED))
                            : (light.at(x, y) - cover * held.level()) / (1 - Math.min(cover, COVERED));
                    double trust = trust(cover);
                    double ground = trust < 1 ? fit.ground(held.coefficients(), x, y) : 0;
                    light.set(x, y, (float) (trust * seen + (1 - trust) * ground));
                }
            }
        }
        return light;
    }

    private static int low(double value) {
        return (int) Math.max(0, Math.floor(value));
    }

    private static int high(double value, int size) {
        return (int) Math.min(size - 1, Math.ceil(value));
    }

    private static double trust(double cover) {
        double t = Math.max(0, Math.min(1, (COVERED - cover) / (COVERED - CLEAR)));
        return t * t * (3 - 2 * t);
    }

    /** Takes the trust from what a turned frame shows where a moon stood, so that other frames count there. */
    void distrust(int index, Turned turned, View to) {
        if (!any()) {
            return;
        }
        MoonFrame frame = frames.get(index);
        Rotation rotation = turning.rotation(schedule.exposures().get(index).aspect());
        List<MoonTrack> here =
                tracks.stream().filter(t -> t.held().get(index) != null).toList();
        List<RoundSpot> spots =
                here.stream().map(t -> frame.spot(t.companion())).toList();
        Plane trust = turned.trust();
        Rows.each(trust.height(), (from, until) -> {
            for (int y = from; y < until; y++) {
                for (int x = 0; x < trust.width(); x++) {
                    if (trust.at(x, y) > 0) {
                        SkyPoint then =
                                TurningWitness.carried(to, frame.view(), rotation, to.pole(x, y), to.side(x, y));
                        double left = 1;
                        for (int k = 0; k < spots.size(); k++) {
                            SkyPoint place = here.get(k).held().get(index).place();
                            double dx = frame.x(then) - frame.x(place);
                            double dy = frame.y(then) - frame.y(place);
                            if (Math.hypot(dx, dy) < spots.get(k).reachPx()) {
                                left *= trust(spots.get(k).at(dx, dy));
                            }
                        }
                        trust.set(x, y, (float) (left * trust.at(x, y)));
                    }
                }
            }
        });
    }

    /**
     * Lays moons and shadows on a band's picture, where they stand at the epoch.
     *
     * @param picture brightness above the sky, 1 for the even globe's brightest part
     * @param view the globe at the epoch on the picture's pixels
     */
    void lay(String band, Plane picture, View view) {
        List<Integer> own = IntStream.range(0, frames.size())
                .filter(i -> schedule.exposures().get(i).band().name().equals(band))
                .boxed()
                .toList();
        tracks.stream()
                .sorted(Comparator.comparing(t -> !t.companion().shadow()))
                .forEach(t -> lay(t, own, picture, view));
    }

    private void lay(MoonTrack track, List<Integer> own, Plane picture, View view) {
        double level = 0;
        double blur = 0;
        int count = 0;
        for (int i : own) {
            if (track.held().get(i) != null) {
                level += track.held().get(i).level();
                blur += frames.get(i).blurPx() / frames.get(i).radiusPx();
                count++;
            }
        }
        if (count == 0) {
            return;
        }
        Companion companion = track.companion();
        double scale = view.disk().equatorialRadiusPx();
        double mean = level / count;
        RoundSpot spot = new RoundSpot(
                companion.radius() * scale,
                scale * Math.hypot(blur / count, companion.softness()),
                new double[] {0},
                new double[] {0});
        SkyPoint place = companion.at(schedule.epoch());
        double column = view.column(place.pole(), place.side());
        double row = view.row(place.pole(), place.side());
        double reach = spot.reachPx();
        for (int y = low(row - reach); y <= high(row + reach, picture.height()); y++) {
            for (int x = low(column - reach); x <= high(column + reach, picture.width()); x++) {
                double cover = spot.at(x - column, y - row);
                if (companion.behind()) {
                    cover *= view.ellipticRadius(view.pole(x, y), view.side(x, y)) > 1 ? 1 : 0;
                }
                double below = picture.at(x, y);
                picture.set(x, y, (float) (below + cover * (companion.shadow() ? (mean - 1) * below : mean - below)));
            }
        }
    }

    /** What was found, for the report. */
    List<MoonResult> results() {
        List<MoonResult> results = new ArrayList<>();
        for (MoonTrack track : tracks) {
            List<MoonResult.InFrame> in = new ArrayList<>();
            for (int i = 0; i < frames.size(); i++) {
                if (track.held().get(i) != null) {
                    in.add(inFrame(track, i));
                }
            }
            View view = turning.viewAtEpoch(frames.get(schedule.reference()).fit());
            Companion companion = track.companion();
            SkyPoint place = companion.at(schedule.epoch());
            results.add(new MoonResult(
                    companion.name(),
                    companion.shadow(),
                    companion.radius() * view.disk().equatorialRadiusPx(),
                    view.column(place.pole(), place.side()),
                    view.row(place.pole(), place.side()),
                    in));
        }
        return results;
    }

    private MoonResult.InFrame inFrame(MoonTrack track, int index) {
        MoonFrame frame = frames.get(index);
        Found free = track.free().get(index);
        return new MoonResult.InFrame(
                schedule.exposures().get(index),
                pixels(frame, track.predicted().at(frame.mid())),
                pixels(frame, free.place()),
                pixels(frame, track.held().get(index).place()),
                free.sigmaPx(),
                track.held().get(index).level(),
                MoonTrack.plain(free, track.companion().shadow()));
    }

    private static PixelOffset pixels(MoonFrame frame, SkyPoint place) {
        return new PixelOffset(frame.x(place), frame.y(place));
    }
}
