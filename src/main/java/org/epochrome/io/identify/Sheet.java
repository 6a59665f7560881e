package org.epochrome.io.identify;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.epochrome.image.Encoding;
import org.epochrome.io.file.CsvTable;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.text.Message;

/**
 * A table with band and times of frames: CSV with a header row, commas, semicolons or tabs between the cells,
 * UTF-8; blank lines and lines that begin with # are passed over. Columns: {@code file}; {@code band}; the times as
 * {@code start} and {@code end}, as an ISO 8601 {@code interval}, or as one of {@code start}, {@code mid}, {@code end}
 * with an {@code exposure}; {@code mirrored}, yes or no; {@code encoding}, linear, srgb or gamma=X. Times are UTC unless they carry an offset.
 *
 * @param file the sheet
 * @param rows its rows in order
 */
public record Sheet(Path file, List<SheetRow> rows) {
    private static final List<String> COLUMNS =
            List.of("file", "band", "start", "mid", "end", "exposure", "interval", "mirrored", "encoding");

    public Sheet {
        rows = List.copyOf(rows);
    }

    /**
     * Reads a sheet.
     *
     * @throws FrameRefused if it cannot be read or understood; names the line
     */
    public static Sheet read(Path sheet) {
        try (CSVParser parser = CsvTable.withHeader(sheet)) {
            checkColumns(sheet, parser.getHeaderNames());
            List<SheetRow> rows = new ArrayList<>();
            Map<Path, String> seen = new HashMap<>();
            for (CSVRecord cells : parser) {
                row(sheet, cells, parser.getCurrentLineNumber()).ifPresent(row -> {
                    String before = seen.putIfAbsent(canonical(row.file()), row.source());
                    if (before != null) {
                        throw new FrameRefused(
                                sheet,
                                Message.of("sheet.twice", FrameRefused.nameOf(row.file()), before, row.source()));
                    }
                    rows.add(row);
                });
            }
            if (rows.isEmpty()) {
                throw new FrameRefused(sheet, Message.of("sheet.noFrames"));
            }
            return new Sheet(sheet, rows);
        } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
            throw new FrameRefused(sheet, Message.of("sheet.notCsv"), e);
        }
    }

    /** The row for a frame, whichever way its path is written. */
    public Optional<SheetRow> rowFor(Path frame) {
        Path wanted = canonical(frame);
        return rows.stream().filter(row -> canonical(row.file()).equals(wanted)).findFirst();
    }

    private static Path canonical(Path path) {
        return path.toAbsolutePath().normalize();
    }

    private static void checkColumns(Path sheet, List<String> names) {
        List<String> columns =
                names.stream().map(n -> n.strip().toLowerCase(Locale.ROOT)).toList();
        if (!columns.contains("file")) {
            throw new FrameRefused(sheet, Message.of("sheet.noFileColumn"));
        }
        // An unknown column may be a misspelt one, and its times would silently be lost.
        for (String column : columns) {
            if (!column.isEmpty() && !COLUMNS.contains(column)) {
                throw new FrameRefused(sheet, Message.of("sheet.unknownColumn", column, String.join(", ", COLUMNS)));
            }
        }
    }

    private static Optional<SheetRow> row(Path sheet, CSVRecord cells, long line) {
        String name = cell(cells, "file");
        if (cells.stream().allMatch(String::isBlank)) {
            return Optional.empty();
        }
        try {
            if (name.isBlank()) {
                throw new DateTimeException(Message.text("sheet.noName"));
            }
            Path frame = sheet.resolveSibling(name);
            String band = cell(cells, "band");
            return Optional.of(new SheetRow(
                    frame,
                    band.isBlank() ? Optional.empty() : Optional.of(band),
                    SheetTimes.span(new SheetTimes.Cells(
                            cell(cells, "start"),
                            cell(cells, "mid"),
                            cell(cells, "end"),
                            cell(cells, "exposure"),
                            cell(cells, "interval"))),
                    mirrored(cell(cells, "mirrored")),
                    encoding(cell(cells, "encoding")),
                    "sheet " + FrameRefused.nameOf(sheet) + " line " + line));
        } catch (DateTimeException e) {
            throw new FrameRefused(sheet, Message.of("sheet.line", line, e.getMessage()), e);
        } catch (InvalidPathException e) {
            throw new FrameRefused(sheet, Message.of("sheet.notAFileName", line, name), e);
        }
    }

    private static Optional<Boolean> mirrored(String word) {
        try {
            return word.isEmpty() ? Optional.empty() : Optional.of(SheetRow.mirrored(word));
        } catch (IllegalArgumentException e) {
            throw new DateTimeException(e.getMessage(), e);
        }
    }

    private static Optional<Encoding> encoding(String word) {
        try {
            return word.isEmpty() ? Optional.empty() : Optional.of(Encoding.of(word));
        } catch (IllegalArgumentException e) {
            throw new DateTimeException(e.getMessage(), e);
        }
    }

    private static String cell(CSVRecord cells, String column) {
        return cells.isSet(column) ? cells.get(column).strip() : "";
    }
}
