package org.epochrome.io.fits;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A binary table (FITS Standard 4.0, section 7.3) of texts and numbers.
 *
 * @param name EXTNAME
 * @param columns of the same length
 */
public record FitsTable(String name, List<Column> columns) implements FitsUnit {
    private static final int DOUBLE_BYTES = 8;

    public FitsTable {
        columns = List.copyOf(columns);
        int rows = columns.get(0).rows();
        if (!columns.stream().allMatch(c -> c.rows() == rows)) {
            throw new IllegalArgumentException("The columns of a table must have the same length.");
        }
    }

    /**
     * A column of texts or of numbers.
     *
     * @param name TTYPE: letters, digits and underscores
     * @param unit TUNIT; empty for none
     * @param comment what it holds
     * @param texts the values, in ASCII once accents are taken off; empty in a column of numbers
     * @param numbers the values as 64-bit floats, NaN where there is none; empty in a column of texts
     */
    public record Column(String name, String unit, String comment, List<String> texts, List<Double> numbers) {
        public Column {
            texts = texts.stream().map(FitsWriter::ascii).toList();
            numbers = List.copyOf(numbers);
        }

        public static Column texts(String name, String comment, List<String> values) {
            return new Column(name, "", comment, values, List.of());
        }

        public static Column numbers(String name, String unit, String comment, List<Double> values) {
            return new Column(name, unit, comment, List.of(), values);
        }

        int rows() {
            return texts.size() + numbers.size();
        }

        int bytes() {
            return numbers.isEmpty()
                    ? Math.max(1, texts.stream().mapToInt(String::length).max().orElse(1))
                    : DOUBLE_BYTES;
        }

        private String form() {
            return numbers.isEmpty() ? bytes() + "A" : "1D";
        }

        private void put(int row, ByteBuffer to) {
            if (numbers.isEmpty()) {
                to.put(texts.get(row).getBytes(StandardCharsets.US_ASCII));
            } else {
                to.putDouble(numbers.get(row));
            }
        }
    }

    private int rowBytes() {
        return columns.stream().mapToInt(Column::bytes).sum();
    }

    @Override
    public List<FitsCard> cards() {
        return List.of();
    }

    @Override
    public List<String> history() {
        return List.of();
    }

    @Override
    public List<FitsCard> structure(boolean first) {
        if (first) {
            throw new IllegalStateException("A FITS file cannot begin with a table.");
        }
        List<FitsCard> all = new ArrayList<>();
        all.add(new FitsCard("XTENSION", "BINTABLE", "binary table"));
        all.add(new FitsCard("BITPIX", 8, ""));
        all.add(new FitsCard("NAXIS", 2, ""));
        all.add(new FitsCard("NAXIS1", rowBytes(), "[byte] a row"));
        all.add(new FitsCard("NAXIS2", columns.get(0).rows(), "rows"));
        all.add(new FitsCard("PCOUNT", 0, ""));
        all.add(new FitsCard("GCOUNT", 1, ""));
        all.add(new FitsCard("TFIELDS", columns.size(), "columns"));
        for (int i = 0; i < columns.size(); i++) {
            Column column = columns.get(i);
            all.add(new FitsCard("TTYPE" + (i + 1), column.name(), column.comment()));
            all.add(new FitsCard("TFORM" + (i + 1), column.form(), ""));
            if (!column.unit().isEmpty()) {
                all.add(new FitsCard("TUNIT" + (i + 1), column.unit(), ""));
            }
        }
        return all;
    }

    @Override
    public void writeData(OutputStream out) throws IOException {
        for (int row = 0; row < columns.get(0).rows(); row++) {
            ByteBuffer bytes = ByteBuffer.allocate(rowBytes());
            int at = 0;
            for (Column column : columns) {
                bytes.position(at);
                column.put(row, bytes);
                at += column.bytes();
            }
            out.write(bytes.array());
        }
    }
}
