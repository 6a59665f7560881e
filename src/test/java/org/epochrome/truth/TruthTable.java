package org.epochrome.truth;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** Rows of a truth table under {@code src/test/resources/truth}, each beside the README that tells how it was made. */
public final class TruthTable {
    private TruthTable() {}

    /** One row, its cells by the name of their column. */
    public record Row(List<String> header, List<String> cells) {
        public String text(String column) {
            return cells.get(header.indexOf(column));
        }

        public boolean has(String column) {
            return header.contains(column) && !text(column).isEmpty();
        }

        public double number(String column) {
            return Double.parseDouble(text(column));
        }

        @Override
        public String toString() {
            return String.join(",", cells);
        }
    }

    /** The rows of a CSV file with a header line, such as {@code earth/rows.csv}. */
    public static List<Row> rows(String csv) {
        List<String> lines = lines(csv);
        List<String> header = cells(lines.get(0));
        List<Row> rows = new ArrayList<>();
        lines.stream().skip(1).forEach(line -> rows.add(new Row(header, cells(line))));
        return rows;
    }

    /** The lines of a text file, without comments. */
    public static List<String> lines(String file) {
        URL url = Objects.requireNonNull(TruthTable.class.getResource("/truth/" + file), file);
        try {
            return Files.readAllLines(Path.of(url.toURI())).stream()
                    .filter(line -> !line.startsWith("#"))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException e) {
            throw new IllegalArgumentException(file, e);
        }
    }

    private static List<String> cells(String line) {
        return Arrays.asList(line.split(",", -1));
    }
}
