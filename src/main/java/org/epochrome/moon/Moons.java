package org.epochrome.moon;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;

/** The moons and shadows in a session's frames: taken out before the globe is turned, and laid where they stand at the epoch. */
public final class Moons {
    /** None at all. */
    public static final Moons NONE = new Moons(List.of(), List.of());

    /**
     * A companion and what was taken out of each frame; null where a frame does not hold it.
     *
     * @param track where it stands
     * @param held its fit on the course
     * @param patches its light
     */
    record Taken(MoonTrack track, List<Found> held, List<Patch> patches) {
        Taken against(List<FittedDisk> disks) {
            return new Taken(track.against(disks), held, patches);
        }
    }

    private final List<Taken> taken;
    private final List<String> warnings;

    Moons(List<Taken> taken, List<String> warnings) {
        // shadows lie on the globe, moons stand in front of it
        this.taken = taken.stream()
                .sorted(Comparator.comparing(t -> !t.track().companion().shadow()))
                .toList();
        this.warnings = List.copyOf(warnings);
    }

    public boolean any() {
        return !taken.isEmpty();
    }

    /** What the user should know, a sentence each. */
    public List<String> warnings() {
        return warnings;
    }

    /**
     * The same with disks that lie elsewhere: where a moon stands against them is reckoned anew.
     *
     * @param disks of the exposures
     */
    public Moons against(List<FittedDisk> disks) {
        return new Moons(taken.stream().map(t -> t.against(disks)).toList(), warnings);
    }

    /** Whether one of them stands where the limb is fitted, so that disks had better be fitted again without them. */
    public boolean atLimb(double depthBlurs) {
        for (Taken t : taken) {
            for (int i : t.track().held()) {
                MoonFrame frame = t.track().frames().get(i);
                SkyPoint place = t.track().companion().at(frame.mid());
                double beyond = frame.beyondLimbPx(frame.x(place), frame.y(place));
                double reach =
                        depthBlurs * frame.blurPx() + t.track().companion().radius() * frame.radiusPx();
                if (Math.abs(beyond) < reach) {
                    return true;
                }
            }
        }
        return false;
    }

    /** An exposure's pixels without them. */
    public Plane without(int exposure, Plane plane) {
        Plane result = null;
        for (Taken t : taken) {
            Patch patch = t.patches().get(exposure);
            if (patch != null) {
                result = result == null ? plane.copy() : result;
                patch.add(result, -patch.frame().fit().brightness());
            }
        }
        return result == null ? plane : result;
    }

    /**
     * Lays them on an exposure that was turned to the epoch.
     *
     * @param picture brightness above the sky; some rows of the output
     * @param top number of the first row
     * @param to the globe at the epoch on the output's pixels
     * @param disk the exposure's disk, as it was placed in the end
     * @param unit what a brightness of 1 is in the exposure's units
     */
    public void lay(int exposure, Plane picture, int top, View to, Instant epoch, Disk disk, double unit) {
        for (Taken t : taken) {
            Patch patch = t.patches().get(exposure);
            if (patch != null) {
                Companion companion = t.track().companion();
                MoonFrame frame = patch.frame();
                SkyPoint moved = companion.at(epoch).minus(companion.at(frame.mid()));
                View from = new View(frame.view().globe(), disk);
                patch.lay(picture, top, to, from, moved, unit / frame.fit().brightness());
            }
        }
    }

    /**
     * What was found.
     *
     * @param output the globe at the epoch on the output's pixels
     */
    public List<FoundMoon> found(View output, Instant epoch) {
        List<FoundMoon> result = new ArrayList<>();
        for (Taken t : taken) {
            List<FoundMoon.InFrame> in = new ArrayList<>();
            for (int i : t.track().held()) {
                in.add(inFrame(t, i));
            }
            Companion companion = t.track().companion();
            SkyPoint place = companion.at(epoch);
            boolean beside = output.ellipticRadius(place.pole(), place.side()) > 1;
            result.add(new FoundMoon(
                    companion.name(),
                    companion.shadow(),
                    beside
                            ? FoundMoon.Where.BESIDE
                            : companion.behind() ? FoundMoon.Where.BEHIND : FoundMoon.Where.IN_FRONT,
                    companion.radius() * output.disk().equatorialRadiusPx(),
                    output.column(place.pole(), place.side()),
                    output.row(place.pole(), place.side()),
                    in));
        }
        return result;
    }

    private static FoundMoon.InFrame inFrame(Taken t, int index) {
        MoonFrame frame = t.track().frames().get(index);
        Companion companion = t.track().companion();
        Found own = t.track().places().get(index);
        Found held = t.held().get(index);
        FittedDisk fit = frame.fit();
        double radius = companion.radius() * frame.radiusPx();
        double light = companion.shadow() ? (held.level() - 1) * held.ground() : held.level();
        return new FoundMoon.InFrame(
                index,
                frame.x(own.place()) - frame.x(companion.at(frame.mid())),
                frame.y(own.place()) - frame.y(companion.at(frame.mid())),
                own.sigmaPx(),
                held.level(),
                Math.PI * radius * radius * light * fit.brightness(),
                t.track().plain(own));
    }
}
