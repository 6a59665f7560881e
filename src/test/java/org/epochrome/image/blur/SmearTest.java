package org.epochrome.image.blur;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.epochrome.image.Pictures;
import org.epochrome.image.Plane;
import org.epochrome.truth.TruthTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SmearTest {
    /** Sums of at most 16 products in floats; values up to 1. */
    private static final double FLOATS = 1e-6;

    private static final int MIDDLE = 20;

    @Test
    void agreesWithTheMeanOfMovedCopiesByScikitImage() {
        Plane plane = Pictures.read("image/image.csv");
        List<TruthTable.Row> rows = TruthTable.rows("image/smear.csv");
        Map<String, Plane> smeared = new HashMap<>();
        for (TruthTable.Row row : rows) {
            double[] offsets = Arrays.stream(row.text("offsetsPx").split(";"))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            Plane ours =
                    smeared.computeIfAbsent(row.text("directionDeg"), d -> Smear.along(Double.parseDouble(d), offsets)
                            .of(plane));
            assertEquals(
                    row.number("value"),
                    ours.at((int) row.number("x"), (int) row.number("y")),
                    FLOATS,
                    () -> row.toString());
        }
        assertEquals(3 * 23 * 19, rows.size());
        assertEquals(3, smeared.size());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 33, 90, 141, -77, 180})
    void drawsOutWithoutMoving(double directionDeg) {
        double[] offsets = {-3.1, -0.7, 0.2, 0.9, 4.4};
        Moments m = Moments.of(Smear.along(directionDeg, offsets).of(point()));
        assertEquals(1, m.sum, 1e-6);
        assertEquals(0, m.x, 1e-5);
        assertEquals(0, m.y, 1e-5);
    }

    /** Along its line a smear's variance is that of its offsets, plus that of sharing between pixels, at most 1/4 per axis. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 33, 90, 141, -77, 180})
    void spreadsAlongItsLineOnly(double directionDeg) {
        double[] offsets = {-3, -1, 0, 1, 3};
        Moments m = Moments.of(Smear.along(directionDeg, offsets).of(point()));
        double sin = Math.sin(Math.toRadians(directionDeg));
        double cos = Math.cos(Math.toRadians(directionDeg));
        double along = sin * sin * m.xx + 2 * sin * cos * m.xy + cos * cos * m.yy;
        double across = cos * cos * m.xx - 2 * sin * cos * m.xy + sin * sin * m.yy;
        assertTrue(along >= 4 - 1e-4 && along <= 4.25, "along: " + along);
        assertTrue(across >= -1e-4 && across <= 0.25, "across: " + across);
    }

    /** One copy of three lies two pixels ahead, the others one behind: so the head shows the sense. */
    @ParameterizedTest
    @CsvSource({"0,0,-2", "90,-2,0", "180,0,2", "-90,2,0", "270,2,0"})
    void countsItsDirectionFromUpCounterClockwise(double directionDeg, int headX, int headY) {
        Plane smeared = Smear.along(directionDeg, -1, -1, 2).of(point());
        assertEquals(1 / 3.0, smeared.at(MIDDLE + headX, MIDDLE + headY), FLOATS);
        assertEquals(2 / 3.0, smeared.at(MIDDLE - headX / 2, MIDDLE - headY / 2), FLOATS);
    }

    @Test
    void turnsWithItsImage() {
        Plane plane = Pictures.read("image/image.csv");
        Smear smear = Smear.along(25, -2.1, -0.4, 2.5);
        Plane expected = Pictures.quarterTurned(smear.of(plane));
        assertSamePixels(expected, smear.on(90, 1, false).of(Pictures.quarterTurned(plane)));
    }

    @Test
    void isMirroredWithItsImage() {
        Plane plane = Pictures.read("image/image.csv");
        Smear smear = Smear.along(25, -2.1, -0.4, 2.5);
        Plane expected = Pictures.mirrored(smear.of(plane));
        assertSamePixels(expected, smear.on(0, 1, true).of(Pictures.mirrored(plane)));
    }

    /** Mirrored first, then turned: the other order would be another posture. */
    @Test
    void isMirroredBeforeItIsTurned() {
        Plane plane = Pictures.read("image/image.csv");
        Smear smear = Smear.along(25, -2.1, -0.4, 2.5);
        Plane expected = Pictures.quarterTurned(Pictures.mirrored(smear.of(plane)));
        assertSamePixels(expected, smear.on(90, 1, true).of(Pictures.quarterTurned(Pictures.mirrored(plane))));
    }

    @Test
    void growsWithItsImage() {
        Smear smear = Smear.along(10, -1, 0, 3);
        assertEquals(4, smear.lengthPx(), 1e-12);
        assertEquals(10, smear.on(0, 2.5, false).lengthPx(), 1e-12);
        assertEquals(10, smear.on(0, 2.5, false).directionDeg(), 1e-12);
    }

    @Test
    void isNothingBelowATwentiethOfAPixel() {
        assertSame(Smear.NONE, Smear.along(30, 7, 7.04, 6.97));
        assertSame(Smear.NONE, Smear.along(30));
        assertSame(Smear.NONE, Smear.NONE.on(40, 3, true));
        Plane plane = point();
        assertSame(plane, Smear.NONE.of(plane));
    }

    private static Plane point() {
        Plane plane = new Plane(2 * MIDDLE + 1, 2 * MIDDLE + 1);
        plane.set(MIDDLE, MIDDLE, 1);
        return plane;
    }

    private static void assertSamePixels(Plane expected, Plane found) {
        assertTrue(expected.sameSize(found));
        for (int i = 0; i < expected.data().length; i++) {
            assertEquals(expected.data()[i], found.data()[i], FLOATS);
        }
    }

    /** A wave as fine as the blur lies off by its phase: short smears lean by the third moment alone. */
    @Test
    void fineDetailLeansToTheDenserSide() {
        double[] offsets = {-1.3, -0.9, -0.4, 0.3, 0.9, 1.7};
        double mean = Arrays.stream(offsets).average().orElseThrow();
        double sine = 0;
        double cosine = 0;
        for (double offset : offsets) {
            sine += Math.sin((offset - mean) / 2);
            cosine += Math.cos((offset - mean) / 2);
        }
        double lean = 2 * Math.atan2(sine, cosine);
        assertTrue(lean < -0.005, "leans by " + lean);
        assertEquals(lean, Smear.along(50, offsets).leanPx(2), 0.1 * Math.abs(lean));
        assertEquals(0, Smear.along(50, offsets).balanced().leanPx(2), 1e-12);
        assertEquals(0, Smear.NONE.leanPx(2), 0);
    }

    @Test
    void aBalancedSmearIsAsLong() {
        Smear balanced = Smear.along(50, 4, -1, 1, -2).balanced();
        assertArrayEquals(new double[] {-3, -1, 1, 3}, balanced.offsetsPx(), 1e-12);
        assertEquals(50, balanced.directionDeg());
        assertSame(Smear.NONE, Smear.NONE.balanced());
    }

    /** Sum, mean place against the middle, and variances. */
    private record Moments(double sum, double x, double y, double xx, double xy, double yy) {
        static Moments of(Plane plane) {
            double[] m = new double[6];
            for (int y = 0; y < plane.height(); y++) {
                for (int x = 0; x < plane.width(); x++) {
                    double v = plane.at(x, y);
                    int dx = x - MIDDLE;
                    int dy = y - MIDDLE;
                    m[0] += v;
                    m[1] += v * dx;
                    m[2] += v * dy;
                    m[3] += v * dx * dx;
                    m[4] += v * dx * dy;
                    m[5] += v * dy * dy;
                }
            }
            return new Moments(m[0], m[1], m[2], m[3], m[4], m[5]);
        }
    }

    /** Copies that move by their weights: against the smear of moved copies, by the difference of two of them. */
    @Test
    void weightedCopiesTellWhatMovingThemChanges() {
        double[] offsets = {-3, -1, 0, 1, 3};
        double[] weights = {0.5, -1, 2, -1, -0.5};
        double step = 0.01;
        double[] before = new double[offsets.length];
        double[] after = new double[offsets.length];
        for (int i = 0; i < offsets.length; i++) {
            before[i] = offsets[i] - step * weights[i];
            after[i] = offsets[i] + step * weights[i];
        }
        Plane round = Gaussian.blur(point(), 2.5);
        Plane moment = Smear.along(180, offsets).moment(round, RowRuns.reached(round, 6), weights);
        Plane low = Smear.along(180, before).of(round);
        Plane high = Smear.along(180, after).of(round);
        for (int y = 5; y < 2 * MIDDLE - 5; y++) {
            double slope = 0.5 * (moment.at(MIDDLE, y + 1) - moment.at(MIDDLE, y - 1));
            double change = (high.at(MIDDLE, y) - low.at(MIDDLE, y)) / (2 * step);
            // Differences over pixels of a blur of 2.5 pixels are good to 1/40 of the largest slope, 0.02. Measured:
            // 5e-6.
            assertEquals(-change, slope, 1.5e-5);
        }
    }
}
