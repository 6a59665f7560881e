package org.epochrome.session;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.colour.Look;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Plane;
import org.epochrome.io.AtomicFile;
import org.epochrome.io.FitsCard;
import org.epochrome.io.FitsWriter;
import org.epochrome.io.OutputFormat;
import org.epochrome.io.OutputRefused;
import org.epochrome.io.PictureWriter;
import org.epochrome.session.Combination.FrameResult;
import org.epochrome.time.UtcText;

/**
 * Where a combination goes.
 *
 * @param files pictures and cubes, the format by the suffix
 * @param report the JSON report, if wanted
 * @param look how finished pictures look
 * @param overwrite whether files of these names may be replaced
 */
public record Outputs(List<Path> files, Optional<Path> report, Look look, boolean overwrite) {
    private static final String NO_FOLDER = "cannot be written: its folder cannot be made; choose another.";

    /**
     * Refuses before any work what could not be written after it.
     *
     * @throws OutputRefused if a file exists and may not be replaced, or its suffix tells no format
     */
    public void check() {
        for (Path file : files) {
            OutputFormat.of(file);
            checkFree(file, overwrite);
        }
        report.ifPresent(file -> checkReport(file, overwrite));
    }

    /**
     * Refuses a report that could not be written.
     *
     * @throws OutputRefused if the file exists and may not be replaced, or its suffix is not .json
     */
    public static void checkReport(Path file, boolean overwrite) {
        if (!file.toString().toLowerCase(Locale.ROOT).endsWith(".json")) {
            throw new OutputRefused(file, "is no name for a report; end it in .json.");
        }
        checkFree(file, overwrite);
    }

    /** A folder that is not there yet will be made. */
    private static void checkFree(Path file, boolean overwrite) {
        Path folder = file.toAbsolutePath().getParent();
        if (Files.isDirectory(folder)) {
            AtomicFile.check(file, overwrite);
            return;
        }
        Path above = folder;
        while (Files.notExists(above)) {
            above = above.getParent();
        }
        if (!Files.isDirectory(above) || !Files.isWritable(above)) {
            throw new OutputRefused(file, NO_FOLDER);
        }
    }

    /**
     * Writes everything.
     *
     * @throws OutputRefused if a file cannot be written
     */
    public void write(Combination combination, String version) {
        List<Plane> picture = null;
        for (Path file : files) {
            makeFolder(file);
            if (OutputFormat.of(file) == OutputFormat.FITS) {
                FitsWriter.write(
                        file,
                        combination.cube().planes(),
                        cards(combination, version),
                        history(combination),
                        overwrite);
            } else {
                picture = picture == null ? picture(combination) : picture;
                PictureWriter.write(
                        file,
                        picture,
                        new PictureWriter.Caption(caption(combination), Optional.of(combination.epoch())),
                        overwrite);
            }
        }
        report.ifPresent(file -> writeReport(file, JsonReport.of(combination, version), overwrite));
    }

    /**
     * Writes a report.
     *
     * @throws OutputRefused if it cannot be written
     */
    public static void writeReport(Path file, String text, boolean overwrite) {
        makeFolder(file);
        AtomicFile.write(file, overwrite, part -> Files.write(part, text.getBytes(StandardCharsets.UTF_8)));
    }

    private static void makeFolder(Path file) {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
        } catch (IOException e) {
            throw new OutputRefused(file, NO_FOLDER, e);
        }
    }

    /** The finished picture: display-encoded red, green and blue. */
    List<Plane> picture(Combination c) {
        return Finishing.picture(c, look);
    }

    private static String caption(Combination c) {
        return c.recipe().body().displayName() + ", " + UtcText.format(c.epoch()) + ", by " + JsonReport.TOOL;
    }

    private static List<FitsCard> cards(Combination c, String version) {
        Aspect a = c.aspect();
        List<FitsCard> cards = new ArrayList<>();
        cards.add(new FitsCard("OBJECT", c.recipe().body().displayName(), ""));
        cards.add(new FitsCard("DATE-OBS", isoForFits(c), "epoch of the picture"));
        cards.add(new FitsCard("TIMESYS", "UTC", "time scale"));
        cards.add(new FitsCard("BUNIT", "1", "part of full scale, linear"));
        cards.add(new FitsCard("CTYPE3", "RGB", "planes are red, green, blue"));
        cards.add(new FitsCard("CREATOR", JsonReport.TOOL + " " + version, ""));
        cards.add(new FitsCard("DISKX", c.disk().x() + 1, "[pix] disk centre, column from 1"));
        cards.add(new FitsCard("DISKY", c.cube().height() - c.disk().y(), "[pix] disk centre, row from 1, bottom up"));
        cards.add(new FitsCard("DISKR", c.disk().equatorialRadiusPx(), "[pix] equatorial radius"));
        cards.add(new FitsCard("NORTHANG", c.disk().northAngleDeg(), "[deg] up to north, counter-clockwise"));
        cards.add(new FitsCard("MIRRORED", c.disk().mirrored(), "odd number of reflections"));
        for (RotationSystem system : c.recipe().body().systems()) {
            cards.add(new FitsCard(
                    system == RotationSystem.SINGLE ? "CM" : "CM" + system.key(),
                    a.centralMeridianDeg(system),
                    "[deg] central meridian"));
        }
        cards.add(new FitsCard("SUBELAT", a.subEarthLatitudeDeg(), "[deg] sub-Earth latitude, planetographic"));
        cards.add(new FitsCard("POLEANG", a.poleAngleDeg(), "[deg] position angle of the pole"));
        cards.add(new FitsCard("PHASE", a.phaseAngleDeg(), "[deg] phase angle"));
        return cards;
    }

    private static String isoForFits(Combination c) {
        String text = UtcText.format(c.epoch());
        return text.endsWith("Z") ? text.substring(0, text.length() - 1) : text;
    }

    private static List<String> history(Combination c) {
        List<String> lines = new ArrayList<>();
        for (FrameResult f : c.frames()) {
            lines.add(String.format(
                    Locale.ROOT,
                    "%s %s mid %s turned %.3f deg",
                    f.exposure().band().name(),
                    f.exposure().frame().head().file().getFileName(),
                    UtcText.format(f.exposure().mid()),
                    f.rotationDeg()));
        }
        return lines;
    }
}
