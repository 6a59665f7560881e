package org.epochrome.image.blur;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.epochrome.image.Pictures;
import org.epochrome.image.Plane;
import org.epochrome.truth.TruthTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GaussianTest {
    /** Sums of at most 27 products in floats, twice; values up to 1. */
    private static final double FLOATS = 1e-6;

    @Test
    void agreesWithScipy() {
        Plane plane = Pictures.read("image/image.csv");
        List<TruthTable.Row> rows = TruthTable.rows("image/gaussian.csv");
        Map<Double, Plane> blurred = new TreeMap<>();
        for (TruthTable.Row row : rows) {
            Plane ours = blurred.computeIfAbsent(row.number("sigmaPx"), sigma -> Gaussian.blur(plane, sigma));
            assertEquals(
                    row.number("value"),
                    ours.at((int) row.number("x"), (int) row.number("y")),
                    FLOATS,
                    () -> row.toString());
        }
        assertEquals(4 * 23 * 19, rows.size());
        assertEquals(4, blurred.size());
    }

    /** The second moment of a sampled Gaussian equals sigma squared to 1e-4 from 0.7 px on; cutting at 4 sigma costs 1e-3. */
    @ParameterizedTest
    @ValueSource(doubles = {0.8, 1.5, 2.6, 5})
    void spreadsAPointByItsSigma(double sigmaPx) {
        Plane point = new Plane(61, 61);
        point.set(30, 30, 1);
        Plane blurred = Gaussian.blur(point, sigmaPx);
        double sum = 0;
        double spread = 0;
        for (int y = 0; y < 61; y++) {
            for (int x = 0; x < 61; x++) {
                sum += blurred.at(x, y);
                spread += blurred.at(x, y) * (x - 30) * (x - 30);
            }
        }
        assertEquals(1, sum, 1e-5);
        assertEquals(sigmaPx * sigmaPx, spread / sum, 1.2e-3 * sigmaPx * sigmaPx);
    }

    @Test
    void copiesWhereThereIsNothingToBlur() {
        Plane plane = Pictures.read("image/image.csv");
        Plane same = Gaussian.blur(plane, 0);
        assertNotSame(plane, same);
        assertArrayEquals(plane.data(), same.data());
    }

    /** Darker towards the edge by what lies outside: half of a wide blur on the edge of a large even plane. */
    @Test
    void countsTheOutsideAsZero() {
        Plane blurred = Gaussian.blur(Plane.filled(80, 80, 1), 5);
        float middle = Gaussian.kernel(5)[0];
        assertEquals(0.5 + 0.5 * middle, blurred.at(0, 40), 1e-5);
        assertTrue(blurred.at(40, 40) > 1 - 1e-5);
    }
}
