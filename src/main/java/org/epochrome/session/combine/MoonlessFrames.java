package org.epochrome.session.combine;

import java.util.List;
import java.util.function.IntFunction;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.io.head.FrameHead;
import org.epochrome.job.Progress;
import org.epochrome.moon.LimbZone;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonMask;
import org.epochrome.moon.removal.MoonFinder;
import org.epochrome.moon.removal.Moons;
import org.epochrome.session.locate.DiskFinder;
import org.epochrome.session.locate.MoonMasks;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.PlaneStore;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/**
 * The disks, and the moons in front of and beside them. Moons at the limb or beside it would pass for wings, a wider blur or a
 * limb. So they are looked for on coarse pixels as soon as disks are known in broad strokes, and hidden from the fine fits, by
 * which they are found and taken out. If others turn up there than were hidden, disks are fitted again without their pixels, and
 * moons found again.
 *
 * @param frames with their disks, the moons still in their pixels
 * @param moons what stands there besides
 */
public record MoonlessFrames(WorkingFrames frames, Moons moons) {
    /** A fit looks for the limb from so many blurs inside it, and for wings and sky up to so many radii. */
    private static final LimbZone FITTED = new LimbZone(12, 1.6);
    /** Moons are looked for a little farther inside before the fine fits, which tell the blur. */
    private static final LimbZone HIDDEN = new LimbZone(16, 1.6);
    /** Radius on the pixels on which moons are looked for before the fine fits. */
    private static final double COARSE_RADIUS_PX = 60;

    static MoonlessFrames of(
            Recipe recipe,
            Turning turning,
            DiskFinder finder,
            Schedule schedule,
            List<Plane> planes,
            Memory memory,
            Progress progress) {
        if (!recipe.corrections().moons()) {
            return new MoonlessFrames(finder.find(planes, rough -> planes, progress), Moons.NONE);
        }
        Search search = new Search(recipe, schedule, turning, progress);
        Hidden hidden = new Hidden(search, planes, memory);
        WorkingFrames frames = finder.find(planes, hidden, progress.part(0, 0.8));
        progress.doing(Message.text("progress.moons"));
        Moons moons = search.moons(frames);
        if (moons.standIn(FITTED, hidden.mask)) {
            Moons found = moons;
            List<Plane> bare = stored(planes.size(), i -> found.hidden(i, planes.get(i)), memory);
            frames = finder.find(bare, rough -> bare, progress.part(0.85, 0.95)).with(planes);
            moons = search.moons(frames);
        }
        return new MoonlessFrames(frames.warned(moons.warnings()), moons);
    }

    /** Moons on frames that are small enough to be held, their disks being known. */
    public static Moons onSmall(Recipe recipe, WorkingFrames frames, Progress progress) {
        Search search = new Search(recipe, frames.schedule(), new Turning(recipe, frames.schedule()), progress);
        return search.moonsOnSmall(frames);
    }

    private static List<Plane> stored(int count, IntFunction<Plane> made, Memory memory) {
        return new PlaneStore(count, made, memory.heldBytes()).filled();
    }

    /** The pixels that fine fits see, without those that moons at the limb or beside it cover. */
    private static final class Hidden implements MoonMasks {
        private final Search search;
        private final List<Plane> planes;
        private final Memory memory;
        private MoonMask mask = MoonMask.NONE;

        Hidden(Search search, List<Plane> planes, Memory memory) {
            this.search = search;
            this.planes = planes;
            this.memory = memory;
        }

        @Override
        public List<Plane> masked(List<FittedDisk> rough) {
            mask = search.mask(planes, rough, memory);
            return mask.isEmpty() ? planes : stored(planes.size(), i -> mask.hidden(i, planes.get(i)), memory);
        }
    }

    /** Looks for moons in a session's exposures. */
    private record Search(Recipe recipe, Schedule schedule, Turning turning, Progress progress) {
        Moons moons(WorkingFrames frames) {
            return moons(frames, frames(frames.disks(), i -> 1));
        }

        /** On frames that are smaller than their heads say. */
        Moons moonsOnSmall(WorkingFrames frames) {
            return moons(
                    frames,
                    IntStream.range(0, frames.size())
                            .mapToObj(i -> frame(
                                    i,
                                    frames.get(i).disk(),
                                    frames.get(i).pixels().width(),
                                    frames.get(i).pixels().height()))
                            .toList());
        }

        private Moons moons(WorkingFrames frames, List<MoonFrame> views) {
            return finder(frames.planes(), views, frames.disks())
                    .find(recipe.body(), schedule.epoch(), recipe.corrections().unsmear());
        }

        /** What covers the limb or the sky beside it, on coarse pixels. */
        MoonMask mask(List<Plane> planes, List<FittedDisk> rough, Memory memory) {
            IntUnaryOperator factor =
                    i -> Math.max(1, (int) (rough.get(i).disk().equatorialRadiusPx() / COARSE_RADIUS_PX));
            List<FittedDisk> disks = IntStream.range(0, rough.size())
                    .mapToObj(i -> rough.get(i).binned(factor.applyAsInt(i)))
                    .toList();
            List<Plane> coarse = stored(planes.size(), i -> Binning.by(factor.applyAsInt(i), planes.get(i)), memory);
            return finder(coarse, frames(disks, factor), disks)
                    .mask(recipe.body(), schedule.epoch(), frames(rough, i -> 1), HIDDEN);
        }

        private MoonFinder finder(List<Plane> planes, List<MoonFrame> frames, List<FittedDisk> disks) {
            return new MoonFinder(
                    frames,
                    schedule.exposures().stream().map(turning::rotationOfGlobe).toList(),
                    turning.viewAtEpoch(disks.get(schedule.reference())),
                    planes,
                    progress);
        }

        /** Frames on pixels so many times larger than their own. */
        private List<MoonFrame> frames(List<FittedDisk> disks, IntUnaryOperator factor) {
            return IntStream.range(0, disks.size())
                    .mapToObj(i -> {
                        FrameHead head = schedule.exposures().get(i).frame().head();
                        int f = factor.applyAsInt(i);
                        return frame(i, disks.get(i), head.width() / f, head.height() / f);
                    })
                    .toList();
        }

        private MoonFrame frame(int index, FittedDisk disk, int width, int height) {
            Exposure exposure = schedule.exposures().get(index);
            return MoonFrame.of(
                    exposure.aspect(),
                    exposure.globe(),
                    exposure.frame().timing().span().duration(),
                    disk,
                    width,
                    height);
        }
    }
}
