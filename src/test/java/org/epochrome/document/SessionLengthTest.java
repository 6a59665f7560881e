package org.epochrome.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Stream;
import org.epochrome.ephemeris.Body;
import org.junit.jupiter.api.Test;

/** The guide's table of how long recordings and sessions may last follows from the rotation that the program turns frames by. */
class SessionLengthTest {
    private static final double MINUTES_A_DAY = 1440;

    @Test
    void followsFromTheRotation() throws IOException {
        int rows = 0;
        for (String line : Files.readAllLines(Path.of("docs/guide.md"))) {
            String[] cells = Stream.of(line.split("\\|")).map(String::strip).toArray(String[]::new);
            if (cells.length == 8 && cells[2].matches("[\\d.]+")) {
                rows++;
                Body body = Body.named(cells[1]).orElseThrow();
                double rate = degreesADay(body) / MINUTES_A_DAY;
                assertEquals(rate, Double.parseDouble(cells[3]), 0.0006, line);
                double drift = Math.toRadians(rate) * Double.parseDouble(cells[2]) / 2;
                double[] scales = {0.05, 0.1, 0.2};
                for (int i = 0; i < scales.length; i++) {
                    assertEquals(2 * scales[i] / drift, Double.parseDouble(cells[4 + i]), 0.06, line);
                }
                assertEquals(30 / rate, Double.parseDouble(cells[7]), 0.6, line);
            }
        }
        assertTrue(rows >= 5, rows + " rows");
    }

    /** From the facts of the planet, its rotation as published. */
    private static double degreesADay(Body body) throws IOException {
        Path facts = Path.of("src/main/resources/org/epochrome/ephemeris/body/"
                + body.displayName().toLowerCase(Locale.ROOT) + ".properties");
        return Files.readAllLines(facts).stream()
                .filter(l -> l.matches("meridian\\.\\w+ = .* d\\b.*"))
                .map(l -> l.replaceAll(".*= [\\d.-]+ ([+-]) ([\\d.]+) d\\b.*", "$2"))
                .mapToDouble(Double::parseDouble)
                .findFirst()
                .orElseThrow();
    }
}
