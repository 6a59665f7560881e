package org.epochrome.session.product;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.epochrome.choice.Choice;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.finish.Look;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.image.Plane;
import org.epochrome.io.file.OutputFolder;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.write.AnimationWriter;
import org.epochrome.io.write.PictureWriter;
import org.epochrome.map.TurningGlobe;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.schedule.Turning;
import org.epochrome.text.Message;

/**
 * A file that shows the combined globe turning: animated GIF or PNG.
 *
 * @param file the format by the suffix
 * @param from first instant; empty for 24 degrees of turning before the epoch, at most three hours
 * @param until last instant; empty for as long after the epoch
 * @param count how many pictures, 2 or more
 */
public record TurningFile(
        @Choice(option = "turning") Path file,
        @Choice(option = "turning-from") Optional<Instant> from,
        @Choice(option = "turning-until") Optional<Instant> until,
        @Choice(key = "pictures", option = "turning-frames") int count)
        implements ProductFile {
    private static final double USUAL_TURN_DEG = 24;
    private static final double MOST_HOURS = 3;
    private static final int USUAL_COUNT = 25;

    private static final int MOST_STILLS = 200;
    private static final int MOST_SIZE_PX = 480;
    /** What is shown around a globe, and around rings, equatorial radii. */
    private static final double GLOBE_MARGIN = 0.12;

    private static final double RING_MARGIN = 0.13;
    private static final int STILL_HUNDREDTHS = 8;
    private static final int HELD_HUNDREDTHS = 80;

    public TurningFile {
        if (count < 2 || count > MOST_STILLS) {
            throw new IllegalArgumentException(Message.text("turning.pictures", MOST_STILLS, count));
        }
        if (from.isPresent() && until.isPresent() && !from.get().isBefore(until.get())) {
            throw new IllegalArgumentException(Message.text("turning.empty"));
        }
    }

    /** An animation around the epoch. */
    public static TurningFile usual(Path file) {
        return new TurningFile(file, Optional.empty(), Optional.empty(), USUAL_COUNT);
    }

    /**
     * Refuses what could not be written.
     *
     * @throws OutputRefused if the file exists and may not be replaced, or its suffix is neither .gif nor .png
     */
    @Override
    public void check(boolean overwrite) {
        AnimationWriter.checkName(file);
        OutputFolder.checkFree(file, overwrite);
    }

    /**
     * Writes the animation.
     *
     * @param look how pictures are finished
     * @param overwrite whether a file of this name may be replaced
     * @throws SessionRefused if it would end before it begins
     * @throws OutputRefused if it cannot be written
     */
    @Override
    public void write(Combination c, Look look, boolean overwrite, String version) {
        Duration half = half(c);
        Instant begin = from.orElseGet(() -> c.epoch().minus(half));
        Instant end = until.orElseGet(() -> c.epoch().plus(half));
        if (!begin.isBefore(end)) {
            throw new SessionRefused(Message.of("turning.order"));
        }
        List<List<Plane>> pictures = pictures(c, look, begin, end);
        List<AnimationWriter.Still> stills = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            stills.add(new AnimationWriter.Still(
                    pictures.get(i), i == 0 || i == count - 1 ? HELD_HUNDREDTHS : STILL_HUNDREDTHS));
        }
        OutputFolder.make(file);
        PictureWriter.Caption caption = Provenance.caption(c, version);
        AnimationWriter.write(
                file,
                stills,
                new PictureWriter.Caption(
                        caption.description() + "; turning from " + begin + " to " + end,
                        caption.shown(),
                        caption.software()),
                overwrite);
    }

    /** The pictures of an animation around the epoch, display-encoded, to look at. */
    public static List<List<Plane>> pictures(Combination c, Look look) {
        TurningFile usual = usual(Path.of(""));
        return usual.pictures(c, look, c.epoch().minus(half(c)), c.epoch().plus(half(c)));
    }

    private static Duration half(Combination c) {
        Body body = c.recipe().body();
        Instant later = c.epoch().plus(Duration.ofMinutes(10));
        Aspect next = Ephemeris.aspect(body, later, c.recipe().place().site());
        double degPerHour = 6
                * Math.abs(Disk.wrapDeg(next.centralMeridianDeg(body.defaultSystem())
                        - c.aspect().centralMeridianDeg(body.defaultSystem())));
        double hours = Math.min(MOST_HOURS, USUAL_TURN_DEG / Math.max(degPerHour, 0.1));
        return Duration.ofMinutes(Math.round(60 * hours));
    }

    /** All pictures, finished as one so that colour and exposure do not flicker. */
    private List<List<Plane>> pictures(Combination c, Look look, Instant begin, Instant end) {
        Body body = c.recipe().body();
        double reach = body.reachRadii() + (body.rings().isPresent() ? RING_MARGIN : GLOBE_MARGIN);
        double whole = 2 * reach * c.disk().equatorialRadiusPx();
        int size = (int) Math.min(MOST_SIZE_PX, Math.ceil(whole));
        double middle = 0.5 * (size - 1);
        Disk disk = new Disk(
                middle,
                middle,
                c.disk().equatorialRadiusPx() * size / whole,
                c.disk().northAngleDeg(),
                c.disk().mirrored());
        TurningGlobe globe = new TurningGlobe(ShadingRemoval.surface(c));
        int pixels = size * size;
        List<Plane> tall =
                List.of(new Plane(size, size * count), new Plane(size, size * count), new Plane(size, size * count));
        Plane lit = new Plane(size, size * count);
        for (int i = 0; i < count; i++) {
            Instant at = begin.plus(Duration.between(begin, end).multipliedBy(i).dividedBy(count - 1L));
            Aspect aspect =
                    Ephemeris.aspect(c.recipe().body(), at, c.recipe().place().site());
            View view = new View(Globe.of(aspect), disk);
            List<Plane> shown = globe.at(view, size, size, Turning.rotation(c.recipe(), c.aspect(), aspect));
            for (int band = 0; band < shown.size(); band++) {
                System.arraycopy(shown.get(band).data(), 0, tall.get(band).data(), i * pixels, pixels);
            }
            System.arraycopy(Finishing.litDisk(view, size, size).data(), 0, lit.data(), i * pixels, pixels);
        }
        List<Plane> finished = Finishing.finished(
                new ColourCube(tall.get(0), tall.get(1), tall.get(2)),
                lit,
                c.recipe().body(),
                Finishing.lookFor(c.recipe(), look));
        return IntStream.range(0, count)
                .mapToObj(i -> finished.stream()
                        .map(p -> new Plane(size, size, Arrays.copyOfRange(p.data(), i * pixels, (i + 1) * pixels)))
                        .toList())
                .toList();
    }
}
