package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.io.FrameHead;
import org.epochrome.job.Progress;
import org.epochrome.moon.MoonFinder;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.Moons;

/**
 * The disks, and the moons in front of and beside them. Disks are fitted to the frames as they are, for that tells where moons
 * may be; if some stand at the limb or beside it, disks are fitted again without their pixels, which would pass for wings or a
 * limb.
 *
 * @param disks where the disks lie
 * @param moons what stands there besides
 */
record WithoutMoons(List<FittedDisk> disks, Moons moons) {
    /** So many blurs inside the limb a fit looks for the limb, */
    private static final double LIMB_BLURS = 12;
    /** and up to so many radii for wings and sky. */
    private static final double SKY_RADII = 1.6;

    static WithoutMoons of(
            Recipe recipe,
            Schedule schedule,
            Turning turning,
            DiskFinder finder,
            List<Plane> planes,
            Memory memory,
            List<String> warnings,
            Progress progress) {
        List<String> firstWarnings = new ArrayList<>();
        List<FittedDisk> disks = finder.find(planes, firstWarnings, progress.part(0, 0.8));
        Moons moons = Moons.NONE;
        if (recipe.corrections().moons()) {
            progress.doing("looking for moons");
            moons = find(recipe, schedule, turning, planes, disks, progress);
            firstWarnings.addAll(moons.warnings());
        }
        if (moons.nearLimb(LIMB_BLURS, SKY_RADII)) {
            Moons found = moons;
            List<Plane> bare =
                    new PlaneStore(planes.size(), i -> found.hidden(i, planes.get(i)), memory.heldBytes()).filled();
            List<String> again = new ArrayList<>(found.warnings());
            disks = finder.find(bare, again, progress.part(0.85, 1));
            firstWarnings = again;
        }
        warnings.addAll(firstWarnings);
        return new WithoutMoons(disks, moons);
    }

    private static Moons find(
            Recipe recipe,
            Schedule schedule,
            Turning turning,
            List<Plane> planes,
            List<FittedDisk> disks,
            Progress progress) {
        List<MoonFrame> frames = new ArrayList<>();
        for (int i = 0; i < disks.size(); i++) {
            Exposure exposure = schedule.exposures().get(i);
            FrameHead head = exposure.frame().head();
            frames.add(frame(exposure, disks.get(i), head.width(), head.height()));
        }
        return find(recipe, schedule, turning, planes, frames, disks.get(schedule.reference()), progress);
    }

    /**
     * Looks for moons on any pixels.
     *
     * @param frames the exposures on them
     * @param reference the disk of the one whose pixels the result lies on
     */
    private static Moons find(
            Recipe recipe,
            Schedule schedule,
            Turning turning,
            List<Plane> planes,
            List<MoonFrame> frames,
            FittedDisk reference,
            Progress progress) {
        return new MoonFinder(
                        frames,
                        schedule.exposures().stream()
                                .map(e -> turning.rotationOfGlobe(e))
                                .toList(),
                        turning.viewAtEpoch(reference),
                        planes,
                        progress)
                .find(recipe.body(), schedule.epoch(), recipe.corrections().unsmear());
    }

    private static MoonFrame frame(Exposure exposure, FittedDisk disk, int width, int height) {
        return MoonFrame.of(
                exposure.aspect(),
                exposure.globe(),
                exposure.frame().timing().span().duration(),
                disk,
                width,
                height);
    }

    /** Moons on frames that are small enough to be held, their disks being known. */
    static Moons onSmall(
            Recipe recipe, Schedule schedule, List<Plane> planes, List<FittedDisk> disks, Progress progress) {
        List<MoonFrame> frames = IntStream.range(0, planes.size())
                .mapToObj(i -> frame(
                        schedule.exposures().get(i),
                        disks.get(i),
                        planes.get(i).width(),
                        planes.get(i).height()))
                .toList();
        return find(
                recipe,
                schedule,
                new Turning(recipe, schedule),
                planes,
                frames,
                disks.get(schedule.reference()),
                progress);
    }
}
