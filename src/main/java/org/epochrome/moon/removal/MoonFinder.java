package org.epochrome.moon.removal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.moon.KnownMoons;
import org.epochrome.moon.LimbZone;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonMask;
import org.epochrome.moon.MoonOrShadow;
import org.epochrome.moon.MoonTrack;
import org.epochrome.moon.SkyPoint;
import org.epochrome.moon.SpotFit;
import org.epochrome.moon.fit.MoonField;
import org.epochrome.moon.fit.MoonFit;
import org.epochrome.moon.fit.MoonSearch;
import org.epochrome.moon.fit.ShadowDepth;
import org.epochrome.text.Message;
import org.epochrome.turn.Rotation;

/**
 * Finds moons and their shadows in a session's frames: those that a theory expects, near where it expects them, and whatever
 * else is compact and does not turn with the globe.
 */
public final class MoonFinder {
    /** How far a theory, or the clock, may be off, arcsec. */
    private static final double SEARCH_ARCSEC = 0.7;
    /** Twice the theory's worst error (docs/validation.md): a moon that one frame alone holds must stand as near. */
    private static final double THEORY_ARCSEC = 0.2;
    /** Part of a companion that must lie on pixels with data. */
    private static final double LEAST_SEEN = 0.5;
    /** How far a feature found by its motion may be from its course. */
    private static final double NEAR_PX = 2;
    /** Places of a companion that is there agree with its course so closely: pixels, or a part of its radius. */
    private static final double AGREE_PX = 0.7;

    private static final double AGREE_RADII = 0.15;
    /** Part of the frames in which a companion must be plain. */
    private static final double MOST_FRAMES = 0.5;
    /** More frames do not help to find unknown ones. */
    private static final int SEARCHED_FRAMES = 12;
    /** Blur that stays where unknown ones are searched for; what is found is fitted on all pixels. */
    private static final double SEARCHED_BLUR_PX = 1;
    /** A moon so many blurs off the limb, and a shadow so far inside it, must be seen if they are there. */
    private static final double CLEAR_BLURS = 4;

    private static final double CLEAR_RADIUS = 0.8;

    private final List<MoonFrame> frames;
    private final List<Rotation> rotations;
    private final View epochView;
    private final List<Plane> planes;
    private final Progress progress;

    /**
     * @param frames the exposures
     * @param rotations how far the globe turns from the epoch to each
     * @param epochView how it stands at the epoch
     * @param planes pixels of the exposures
     */
    public MoonFinder(
            List<MoonFrame> frames, List<Rotation> rotations, View epochView, List<Plane> planes, Progress progress) {
        this.frames = frames;
        this.rotations = rotations;
        this.epochView = epochView;
        this.planes = planes;
        this.progress = progress;
    }

    /**
     * The companions that the frames show.
     *
     * @param unsmeared how much of the dispersion blur is removed from them at the epoch
     */
    public Moons find(Body body, Instant epoch, DispersionDeconvolution.Extent unsmeared) {
        List<Message> warnings = new ArrayList<>();
        List<MoonTrack> tracks = tracks(body, epoch, warnings);
        List<MoonFrame> told = told(tracks);
        List<MoonTrack> there = tracks.stream().map(t -> t.on(told)).toList();
        return new Moons(new MoonRemoval(told, rotations, planes, there, epoch, unsmeared, progress).taken(), warnings);
    }

    /**
     * What a disk fit shall not see: companions, looked for on disks that are known in broad strokes.
     *
     * @param full the exposures with all their pixels, if these frames are coarser
     * @param zone where they matter
     */
    public MoonMask mask(Body body, Instant epoch, List<MoonFrame> full, LimbZone zone) {
        return MoonMask.of(tracks(body, epoch, new ArrayList<>()), full, zone);
    }

    private List<MoonTrack> tracks(Body body, Instant epoch, List<Message> warnings) {
        List<Instant> instants =
                new ArrayList<>(frames.stream().map(MoonFrame::mid).toList());
        instants.add(epoch);
        instants.sort(Comparator.naturalOrder());
        List<MoonTrack> tracks = new ArrayList<>();
        List<MoonOrShadow> expected = KnownMoons.of(body, instants);
        List<List<SpotFit>> places = places(expected, f -> pixels(f, SEARCH_ARCSEC));
        for (int k = 0; k < expected.size(); k++) {
            MoonTrack track = MoonTrack.moved(expected.get(k), frames, places.get(k));
            if (isThere(track) || isWhereOneFrameHasIt(track, expected.get(k))) {
                tracks.add(track);
            } else if (mustBeSeen(expected.get(k))) {
                warnings.add(missing(expected.get(k)));
            }
        }
        List<MoonOrShadow> strangers = searched(body, tracks);
        places = places(strangers, f -> NEAR_PX);
        for (int k = 0; k < strangers.size(); k++) {
            MoonTrack track = MoonTrack.straight(strangers.get(k), frames, places.get(k));
            if (isThere(track)) {
                tracks.add(track);
            }
        }
        return tracks;
    }

    /** The frames with the wings that their shadows show. */
    private List<MoonFrame> told(List<MoonTrack> tracks) {
        return IntStream.range(0, frames.size())
                .parallel()
                .mapToObj(i -> tracks.stream()
                        .filter(t ->
                                t.companion().shadow() && t.companion().name().isPresent())
                        .filter(t ->
                                t.places().get(i) != null && t.plain(t.places().get(i)))
                        .findFirst()
                        .map(t -> ShadowDepth.black(MoonField.of(frames.get(i), planes.get(i)), t.companion()))
                        .orElse(frames.get(i)))
                .toList();
    }

    /** Each companion's fit in each frame, null where a frame does not hold it. */
    private List<List<SpotFit>> places(List<MoonOrShadow> companions, ToDoubleFunction<MoonFrame> searchPx) {
        SpotFit[][] found = new SpotFit[companions.size()][frames.size()];
        IntStream.range(0, frames.size()).parallel().forEach(i -> {
            progress.check();
            MoonFrame frame = frames.get(i);
            double reach = searchPx.applyAsDouble(frame);
            MoonField field = null;
            for (int k = 0; k < companions.size(); k++) {
                MoonOrShadow companion = companions.get(k);
                // A predicted companion is known even if the edge of the picture cuts it.
                if (companion.name().isPresent() ? frame.shows(companion) : frame.holds(companion, reach)) {
                    field = field == null ? MoonField.of(frame, planes.get(i)) : field;
                    SpotFit fit = new MoonFit(field, companion, reach).free(reach);
                    found[k][i] = fit.seen() < LEAST_SEEN ? null : fit;
                }
            }
        });
        return Arrays.stream(found).map(Arrays::asList).toList();
    }

    private List<MoonOrShadow> searched(Body body, List<MoonTrack> known) {
        if (!body.moons().visible()) {
            return List.of();
        }
        List<Integer> order = IntStream.range(0, frames.size())
                .boxed()
                .sorted(Comparator.comparing(i -> frames.get(i).mid()))
                .toList();
        int count = Math.min(SEARCHED_FRAMES, frames.size());
        List<Integer> chosen = IntStream.range(0, count)
                .mapToObj(k -> order.get(count == 1 ? 0 : k * (frames.size() - 1) / (count - 1)))
                .toList();
        List<MoonFrame> coarse =
                chosen.stream().map(i -> frames.get(i).binned(bin(i))).toList();
        MoonSearch search =
                new MoonSearch(coarse, chosen.stream().map(rotations::get).toList(), epochView);
        return search.find(
                k -> MoonField.of(coarse.get(k), Binning.by(bin(chosen.get(k)), planes.get(chosen.get(k)))),
                known.stream().map(MoonTrack::companion).toList(),
                progress);
    }

    /** Pixels along a side that one is made of where moons are searched for: as many as a frame's blur allows. */
    private int bin(int index) {
        return (int) Math.max(1, frames.get(index).blurPx() / SEARCHED_BLUR_PX);
    }

    private boolean isThere(MoonTrack track) {
        double radius = track.companion().radius() * frames.get(0).radiusPx();
        return track.plain().length >= Math.max(2, MOST_FRAMES * track.held().length)
                && track.offPx() < Math.max(AGREE_PX, AGREE_RADII * radius)
                && !track.turns(epochView, rotations);
    }

    /**
     * Whether a companion that the theory tells of and that only one frame holds is there: no motion tells it from a marking, but
     * the theory tells its place better than markings of its size stand close to each other.
     */
    private boolean isWhereOneFrameHasIt(MoonTrack track, MoonOrShadow expected) {
        if (track.held().length != 1 || track.plain().length != 1) {
            return false;
        }
        MoonFrame frame = frames.get(track.held()[0]);
        SpotFit found = track.places().get(track.held()[0]);
        SkyPoint off = found.place().minus(expected.at(frame.mid()));
        return off.length() * frame.radiusPx() < pixels(frame, THEORY_ARCSEC) + 2 * found.sigmaPx();
    }

    private static double pixels(MoonFrame frame, double arcsec) {
        return arcsec * 2 * frame.radiusPx() / frame.aspect().equatorialDiameterArcsec();
    }

    private boolean mustBeSeen(MoonOrShadow companion) {
        return frames.stream().allMatch(f -> {
            SkyPoint place = companion.at(f.mid());
            double radius = companion.radius() * f.radiusPx();
            double x = f.x(place);
            double y = f.y(place);
            return f.holds(companion, 0)
                    && (companion.shadow()
                            ? f.elliptic(x, y) < CLEAR_RADIUS && radius > f.blurPx()
                            : radius > 0.5 * f.blurPx() && f.beyondLimbPx(x, y) > radius + CLEAR_BLURS * f.blurPx());
        });
    }

    private Message missing(MoonOrShadow companion) {
        MoonFrame frame = frames.get(0);
        SkyPoint place = companion.at(frame.mid());
        return Message.of("moon.missing", Moons.title(companion), frame.x(place), frame.y(place));
    }
}
