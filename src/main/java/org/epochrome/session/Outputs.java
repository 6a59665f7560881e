package org.epochrome.session;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.Finish;
import org.epochrome.colour.Framed;
import org.epochrome.colour.Framing;
import org.epochrome.colour.Look;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.io.AtomicFile;
import org.epochrome.io.FitsImage;
import org.epochrome.io.FitsWriter;
import org.epochrome.io.OutputFormat;
import org.epochrome.io.OutputRefused;
import org.epochrome.io.PictureWriter;
import org.epochrome.time.UtcText;

/**
 * Where a combination goes.
 *
 * @param files pictures and cubes, the format by the suffix
 * @param report the JSON report, if wanted
 * @param look how finished pictures look
 * @param floats whether TIFF pictures hold 32-bit floats instead of 16-bit integers
 * @param overwrite whether files of these names may be replaced
 */
public record Outputs(List<Path> files, Optional<Path> report, Look look, boolean floats, boolean overwrite) {
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
        report.ifPresent(file -> checkReport(file, ".json or .html", overwrite));
    }

    /**
     * Refuses a report that could not be written.
     *
     * @throws OutputRefused if the file exists and may not be replaced, or its suffix is not .json
     */
    public static void checkReport(Path file, boolean overwrite) {
        checkReport(file, ".json", overwrite);
    }

    private static void checkReport(Path file, String suffixes, boolean overwrite) {
        if (!file.toString().toLowerCase(Locale.ROOT).endsWith(".json")) {
            throw new OutputRefused(file, "is no name for a report; end it in " + suffixes + ".");
        }
        checkFree(file, overwrite);
    }

    /**
     * Refuses a file that could not be written; a folder that is not there yet will be made.
     *
     * @throws OutputRefused if it exists and may not be replaced, or its folder cannot take it
     */
    public static void checkFree(Path file, boolean overwrite) {
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
                Provenance from = new Provenance(combination, version);
                FitsWriter.write(
                        file,
                        List.of(
                                new FitsImage("", combination.cube().planes(), from.cube(), from.history()),
                                from.frames()),
                        overwrite);
            } else {
                picture = picture == null ? picture(combination) : picture;
                PictureWriter.write(
                        file,
                        picture,
                        new PictureWriter.Form(Optional.empty(), floats),
                        captionOf(combination, version),
                        overwrite);
            }
        }
        report.ifPresent(file -> writeReport(file, JsonReport.of(combination, look, version), overwrite));
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

    static void makeFolder(Path file) {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
        } catch (IOException e) {
            throw new OutputRefused(file, NO_FOLDER, e);
        }
    }

    /** The finished picture: display-encoded red, green and blue. */
    public List<Plane> picture(Combination c) {
        return framed(c).planes();
    }

    /** The same, and where its disk lies. */
    public Framed framed(Combination c) {
        return Finishing.picture(c, look);
    }

    /** The same on the pixels of the cube, whatever the framing. */
    public List<Plane> pictureAsShot(Combination c) {
        return Finishing.picture(c, new Look(look.white(), look.sharpening(), look.tone(), Framing.AS_SHOT))
                .planes();
    }

    /**
     * A linear picture of something else than the disk as it was seen, in the same colours and tone.
     *
     * @param disk 1 where colour and exposure are measured, 0 elsewhere
     */
    List<Plane> finished(ColourCube cube, Plane disk, Body body) {
        return Finish.shown(Finish.balanced(cube, disk, body, look.white()), disk, look.tone());
    }

    /** What a picture of the combination says about itself. */
    static PictureWriter.Caption captionOf(Combination c, String version) {
        return new PictureWriter.Caption(
                c.recipe().body().displayName() + ", " + UtcText.format(c.epoch()) + ", by " + JsonReport.TOOL,
                Optional.of(c.epoch()),
                JsonReport.TOOL + " " + version);
    }
}
