package org.epochrome.moon.removal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.IntStream;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.moon.FoundMoon;
import org.epochrome.moon.LimbZone;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonMask;
import org.epochrome.moon.MoonOrShadow;
import org.epochrome.moon.MoonTrack;
import org.epochrome.moon.SkyPoint;
import org.epochrome.moon.SpotFit;
import org.epochrome.text.Message;

/** The moons and shadows in a session's frames: removed before the globe is turned, and drawn at their positions at the epoch. */
public final class Moons {
    /** None at all. */
    public static final Moons NONE = new Moons(List.of(), List.of());

    /** Part of a companion on pixels with data from which on it counts as whole. */
    private static final double WHOLE = 0.99;

    /**
     * A companion and what was taken out of each frame; null where a frame does not hold it.
     *
     * @param track where it stands
     * @param held its fit on the course
     * @param patches its light
     * @param sources the exposure whose patch is drawn on each, none if negative
     */
    record Taken(MoonTrack track, List<SpotFit> held, List<Patch> patches, List<Integer> sources) {
        /** A companion that is drawn on the exposures that show it. */
        static Taken of(MoonTrack track, List<SpotFit> held, List<Patch> patches) {
            return new Taken(
                    track,
                    held,
                    patches,
                    IntStream.range(0, patches.size())
                            .mapToObj(i -> patches.get(i) == null ? -1 : i)
                            .toList());
        }

        Taken against(List<FittedDisk> disks) {
            return new Taken(track.against(disks), held, patches, sources);
        }

        /** Laid on all exposures of the bands: of those that hold it as a whole each takes the nearest in time; on none if a band has none. */
        Taken inAll(List<List<Integer>> bands) {
            Integer[] from = new Integer[patches.size()];
            Arrays.fill(from, -1);
            for (List<Integer> band : bands) {
                List<Integer> whole = band.stream()
                        .filter(j -> held.get(j) != null && held.get(j).seen() > WHOLE)
                        .toList();
                if (whole.isEmpty()) {
                    return new Taken(track, held, patches, Collections.nCopies(from.length, -1));
                }
                for (int i : band) {
                    Instant then = track.frames().get(i).mid();
                    from[i] = Collections.min(
                            whole,
                            Comparator.comparingDouble(j -> Math.abs(MoonOrShadow.secondsSince(
                                    then, track.frames().get(j).mid()))));
                }
            }
            return new Taken(track, held, patches, List.of(from));
        }

        boolean isLaid() {
            return sources.stream().anyMatch(i -> i >= 0);
        }
    }

    private final List<Taken> taken;
    private final List<Message> warnings;

    Moons(List<Taken> taken, List<Message> warnings) {
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
    public List<Message> warnings() {
        return warnings;
    }

    /**
     * These moons with other disks: their positions relative to the disks are recomputed.
     *
     * @param disks of the exposures
     */
    public Moons against(List<FittedDisk> disks) {
        return new Moons(taken.stream().map(t -> t.against(disks)).toList(), warnings);
    }

    /**
     * These moons, each drawn on all exposures of a picture's bands or, if a band never shows all of it, on none: otherwise it would be
     * there in some colours only.
     *
     * @param bands the exposures of each
     */
    public Moons inAll(List<List<Integer>> bands) {
        return new Moons(taken.stream().map(t -> t.inAll(bands)).toList(), warnings);
    }

    /** Notes on what was removed from an exposure and not drawn into the picture. */
    public List<Message> notes(int exposure, Instant epoch) {
        return taken.stream()
                .filter(t -> t.patches().get(exposure) != null)
                .filter(t -> !t.isLaid() || !t.track().companion().inSight().test(epoch))
                .map(t -> Message.of("moon.removed", title(t.track().companion())))
                .toList();
    }

    /** Sentences about those that are within the picture at the epoch but are not drawn into it. */
    public List<Message> leftOut(View output, Instant epoch, int width, int height) {
        List<Message> sentences = new ArrayList<>();
        for (Taken t : taken) {
            MoonOrShadow companion = t.track().companion();
            SkyPoint place = companion.at(epoch);
            double x = output.column(place.pole(), place.side());
            double y = output.row(place.pole(), place.side());
            if (!t.isLaid() && companion.inSight().test(epoch) && x > 0 && y > 0 && x < width - 1 && y < height - 1) {
                sentences.add(Message.of("moon.leftOut", title(companion), x, y));
            }
        }
        return sentences;
    }

    static Message title(MoonOrShadow companion) {
        if (companion.shadow()) {
            return companion.name().map(n -> Message.of("moon.shadowOf", n)).orElse(Message.of("moon.someShadow"));
        }
        return companion.name().map(n -> Message.of("moon.named", n)).orElse(Message.of("moon.some"));
    }

    /**
     * Whether one of them stands where limb, wings and sky are fitted.
     *
     * @param hidden what was hidden from the fit and is left out of account
     */
    public boolean standIn(LimbZone zone, MoonMask hidden) {
        return taken.stream().anyMatch(t -> Arrays.stream(t.track().held()).anyMatch(i -> {
            MoonFrame frame = t.track().frames().get(i);
            MoonOrShadow companion = t.track().companion();
            SkyPoint place = companion.at(frame.mid());
            return zone.holds(frame, companion, place, frame.blurPx())
                    && !hidden.covers(i, frame.x(place), frame.y(place), companion.radius() * frame.radiusPx());
        }));
    }

    /** An exposure's pixels without them. */
    public Plane without(int exposure, Plane plane) {
        return changed(
                exposure,
                plane,
                (patch, result) -> patch.add(result, -patch.frame().fit().brightness()));
    }

    /** An exposure's pixels with no data where they are. */
    public Plane hidden(int exposure, Plane plane) {
        return changed(exposure, plane, Patch::hide);
    }

    private Plane changed(int exposure, Plane plane, BiConsumer<Patch, Plane> change) {
        Plane result = null;
        for (Taken t : taken) {
            Patch patch = t.patches().get(exposure);
            if (patch != null) {
                result = result == null ? plane.copy() : result;
                change.accept(patch, result);
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
            int source = t.sources().get(exposure);
            MoonOrShadow companion = t.track().companion();
            if (source >= 0 && companion.inSight().test(epoch)) {
                Patch patch = t.patches().get(source);
                MoonFrame frame = patch.frame();
                SkyPoint moved = companion.at(epoch).minus(companion.at(frame.mid()));
                Disk placed = source == exposure
                        ? disk
                        : t.track().frames().get(source).fit().disk();
                View from = new View(frame.view().globe(), placed);
                double brighter = t.track().frames().get(source).fit().brightness()
                        / t.track().frames().get(exposure).fit().brightness();
                patch.lay(
                        picture,
                        top,
                        to,
                        from,
                        moved,
                        unit * brighter / frame.fit().brightness());
            }
        }
    }

    /**
     * What was found, as far as it is in sight at the epoch.
     *
     * @param output the globe at the epoch on the output's pixels
     */
    public List<FoundMoon> found(View output, Instant epoch) {
        List<FoundMoon> result = new ArrayList<>();
        for (Taken t : taken) {
            MoonOrShadow companion = t.track().companion();
            if (!companion.inSight().test(epoch)) {
                continue;
            }
            List<FoundMoon.InFrame> in = new ArrayList<>();
            for (int i : t.track().held()) {
                in.add(inFrame(t, i));
            }
            SkyPoint place = companion.at(epoch);
            result.add(new FoundMoon(
                    companion.name(),
                    companion.shadow(),
                    where(companion, place, output),
                    companion.radius() * output.disk().equatorialRadiusPx(),
                    output.column(place.pole(), place.side()),
                    output.row(place.pole(), place.side()),
                    in));
        }
        return result;
    }

    private static FoundMoon.Where where(MoonOrShadow companion, SkyPoint place, View output) {
        if (output.ellipticRadius(place.pole(), place.side()) > 1) {
            return FoundMoon.Where.BESIDE;
        }
        return companion.behind() ? FoundMoon.Where.BEHIND : FoundMoon.Where.IN_FRONT;
    }

    private static FoundMoon.InFrame inFrame(Taken t, int index) {
        MoonFrame frame = t.track().frames().get(index);
        MoonOrShadow companion = t.track().companion();
        SpotFit own = t.track().places().get(index);
        SpotFit held = t.held().get(index);
        FittedDisk fit = frame.fit();
        double x = frame.x(companion.at(frame.mid()));
        double y = frame.y(companion.at(frame.mid()));
        double radius = companion.radius() * frame.radiusPx();
        double light = companion.shadow() ? (held.level() - 1) * held.ground() : held.level();
        return new FoundMoon.InFrame(
                index,
                x,
                y,
                frame.x(own.place()) - x,
                frame.y(own.place()) - y,
                own.sigmaPx(),
                held.level(),
                Math.PI * radius * radius * light * fit.brightness(),
                t.track().plain(own));
    }
}
