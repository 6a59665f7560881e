package org.epochrome.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.Shot;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.text.Message;

/**
 * An evening at the telescope that never was.
 *
 * @param body the planet
 * @param site where from
 * @param epoch the instant its colour picture is for: midway between the earliest and the latest middle
 * @param scene what was photographed
 * @param shots the recordings by file name, in the order of their time
 * @param texts other files, by name
 */
public record DemoSession(
        Body body, Site site, Instant epoch, Scene scene, Map<String, Shot> shots, Map<String, String> texts) {
    private static final List<Band> COLOURS = List.of(Band.R, Band.G, Band.B);

    /** Takes the pictures. */
    public List<DemoFrame> frames() {
        return shots.entrySet().stream()
                .map(named -> new DemoFrame(named.getKey(), named.getValue(), scene.photograph(named.getValue())))
                .toList();
    }

    /** The picture that a perfect combination would give: R, G, B at the epoch on the grid of the reference frame. */
    public List<Rendered> truth() {
        return scene.truth(COLOURS, reference(), epoch);
    }

    /** The green recording nearest to the epoch. */
    public Shot reference() {
        return shots.values().stream()
                .filter(shot -> shot.band().equals(Band.G))
                .min(Comparator.comparing(this::fromEpoch))
                .orElseThrow();
    }

    /**
     * Writes frames and texts into a folder, which is made if it is not there.
     *
     * @throws OutputRefused if a file exists and may not be replaced, or cannot be written
     */
    public void write(Path folder, boolean overwrite) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new OutputRefused(folder, Message.of("demo.notMade"), e);
        }
        shots.keySet().forEach(name -> AtomicFile.check(folder.resolve(name), overwrite));
        for (DemoFrame frame : frames()) {
            FrameWriter.write(
                    folder.resolve(frame.file()), frame.picture().sixteenBit(), cards(frame.shot()), overwrite);
        }
        texts.forEach((name, text) ->
                AtomicFile.write(folder.resolve(name), overwrite, part -> Files.writeString(part, text)));
    }

    private List<FitsCard> cards(Shot shot) {
        double seconds = shot.span().duration().toMillis() / 1000.0;
        return List.of(
                new FitsCard("DATE-OBS", time(shot.span().start()), "UTC, start"),
                new FitsCard("DATE-END", time(shot.span().end()), "UTC, end"),
                new FitsCard("TIMESYS", "UTC", ""),
                new FitsCard("EXPTIME", seconds, "[s] whole recording"),
                new FitsCard("FILTER", shot.band().name(), ""),
                new FitsCard("OBJECT", body.displayName(), "invented surface"));
    }

    /** As FITS has it, without the Z (FITS Standard 4.0, section 9.1.1). */
    private static String time(Instant instant) {
        return LocalDateTime.ofInstant(instant, ZoneOffset.UTC).format(DateTimeFormatter.ISO_LOCAL_DATE_TIME);
    }

    private Duration fromEpoch(Shot shot) {
        return Duration.between(epoch, shot.span().mid()).abs();
    }
}
