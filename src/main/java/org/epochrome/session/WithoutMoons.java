package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.io.FrameHead;
import org.epochrome.job.Progress;
import org.epochrome.moon.MoonFinder;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.Moons;

/**
 * The disks, and the moons in front of and beside them. Disks are fitted to the frames as they are, for that tells where moons
 * may be; if some stand where the limb is fitted, disks are fitted again without them.
 *
 * @param disks where the disks lie
 * @param moons what stands there besides
 */
record WithoutMoons(List<FittedDisk> disks, Moons moons) {
    /** So many blurs along the limb tell where it lies, or could. */
    private static final double LIMB_BLURS = 12;

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
        if (moons.atLimb(LIMB_BLURS)) {
            Moons found = moons;
            List<Plane> bare =
                    new PlaneStore(planes.size(), i -> found.without(i, planes.get(i)), memory.heldBytes()).filled();
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
            frames.add(MoonFrame.of(
                    exposure.aspect(),
                    exposure.frame().timing().span().duration(),
                    disks.get(i),
                    head.width(),
                    head.height()));
        }
        return new MoonFinder(
                        frames,
                        schedule.exposures().stream()
                                .map(e -> turning.rotationOfGlobe(e.aspect()))
                                .toList(),
                        turning.viewAtEpoch(disks.get(schedule.reference())),
                        planes,
                        progress)
                .find(recipe.body(), schedule.epoch(), recipe.corrections().unsmear());
    }
}
