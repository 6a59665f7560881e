package org.epochrome.session.report;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.colour.finish.Framed;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.image.Plane;
import org.epochrome.io.file.AtomicFile;
import org.epochrome.io.file.OutputFolder;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.io.fits.FitsImage;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.write.OutputFormat;
import org.epochrome.io.write.PictureWriter;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.Finishing;
import org.epochrome.session.product.Products;
import org.epochrome.session.product.Provenance;
import org.epochrome.session.product.Session;
import org.epochrome.text.Message;

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
    /**
     * The pictures, cubes and the report for programs of a session.
     *
     * @param overwrite whether files of these names may be replaced
     */
    public static Outputs of(Session session, boolean overwrite) {
        Products products = session.products();
        return new Outputs(products.pictures(), products.report(), session.look(), products.floats(), overwrite);
    }

    /**
     * Refuses before any work what could not be written after it.
     *
     * @throws OutputRefused if a file exists and may not be replaced, or its extension is not a known format
     */
    public void check() {
        for (Path file : files) {
            OutputFormat.of(file);
            OutputFolder.checkFree(file, overwrite);
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
            throw new OutputRefused(file, Message.of("report.name", suffixes));
        }
        OutputFolder.checkFree(file, overwrite);
    }

    /**
     * Writes everything.
     *
     * @throws OutputRefused if a file cannot be written
     */
    public void write(Combination combination, String version) {
        List<Plane> picture = null;
        for (Path file : files) {
            OutputFolder.make(file);
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
                        Provenance.caption(combination, version),
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
        OutputFolder.make(file);
        AtomicFile.write(file, overwrite, part -> Files.write(part, text.getBytes(StandardCharsets.UTF_8)));
    }

    /** The finished picture: display-encoded red, green and blue. */
    public List<Plane> picture(Combination c) {
        return framed(c).planes();
    }

    /** The finished picture of a combination, with the position of its disk. */
    public Framed framed(Combination c) {
        return Finishing.picture(c, look);
    }

    /** The planes of the finished picture on the pixels of the cube, whatever the framing. */
    public List<Plane> pictureAsShot(Combination c) {
        return Finishing.picture(c, look.with(Look::framing, Framing.AS_SHOT)).planes();
    }
}
