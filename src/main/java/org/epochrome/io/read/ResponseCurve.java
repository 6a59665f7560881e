package org.epochrome.io.read;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.io.file.CsvTable;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.text.Message;

/**
 * A camera's response from a table: CSV with two columns, wavelength in nm and quantum efficiency (or transmission) in any
 * unit; a header row, blank lines and lines that begin with # are passed over.
 */
public final class ResponseCurve {
    private ResponseCurve() {}

    /**
     * Reads a curve.
     *
     * @throws FrameRefused if it cannot be read or understood; names the line
     */
    public static Spectrum read(Path file) {
        List<Spectrum.Point> points = new ArrayList<>();
        try (CSVParser table = CsvTable.headless(file)) {
            for (CSVRecord row : table) {
                if (row.stream().allMatch(String::isBlank) || (points.isEmpty() && !startsWithNumber(row))) {
                    continue;
                }
                points.add(point(file, row));
            }
            return Spectrum.seenBy(points);
        } catch (IllegalArgumentException e) {
            throw new FrameRefused(file, Message.of("response.wrong", e.getMessage()), e);
        } catch (IOException | UncheckedIOException e) {
            throw new FrameRefused(file, Message.of("response.notCsv"), e);
        }
    }

    private static boolean startsWithNumber(CSVRecord row) {
        return row.get(0).strip().matches("[-+.0-9].*");
    }

    private static Spectrum.Point point(Path file, CSVRecord row) {
        try {
            return new Spectrum.Point(
                    Double.parseDouble(row.get(0).strip()),
                    Double.parseDouble(row.get(1).strip()));
        } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
            throw new FrameRefused(file, Message.of("response.row", row.getRecordNumber()), e);
        }
    }
}
