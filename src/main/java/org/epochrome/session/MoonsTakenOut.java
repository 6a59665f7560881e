package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;

/**
 * The frames without moons, and their disks. Disks are fitted to the frames as they are first, for that tells where moons may
 * be; if some were found, disks are fitted again without them, and then the moons once more.
 *
 * @param planes pixels without moons
 * @param disks where the disks lie
 * @param moons what was taken out
 */
record MoonsTakenOut(List<Plane> planes, List<FittedDisk> disks, Moons moons) {

    static MoonsTakenOut of(
            Recipe recipe,
            Schedule schedule,
            Turning turning,
            DiskFinder finder,
            List<Plane> planes,
            List<String> warnings,
            Progress progress) {
        List<String> firstWarnings = new ArrayList<>();
        List<FittedDisk> first = finder.find(planes, firstWarnings, progress.part(0, 0.6));
        Moons none = Moons.none(schedule, turning);
        progress.doing("looking for moons");
        Moons seen = recipe.moons() ? Moons.find(schedule, turning, planes, first, progress) : none;
        if (!seen.any()) {
            warnings.addAll(firstWarnings);
            return new MoonsTakenOut(planes, first, none);
        }
        List<FittedDisk> disks = finder.find(seen.healed(planes), warnings, progress.part(0.6, 1));
        Moons moons = Moons.find(schedule, turning, planes, disks, progress);
        return new MoonsTakenOut(moons.healed(planes), disks, moons);
    }
}
