package org.epochrome.align;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FusionTest {
    private static final double ROUNDING = 1e-9;

    @Test
    void leavesTheLimbAloneWithoutDetail() {
        List<Shift> found = Fusion.corrections(List.of(0.1, 0.3), List.of(new Link(0, 1, Shift.UNKNOWN)));
        assertShift(new Shift(0, 0, 0.1, 0.1), found.get(0));
        assertShift(new Shift(0, 0, 0.3, 0.3), found.get(1));
    }

    /**
     * Two frames, one link: what the detail asks for is shared in the ratio of the limbs' variances. By hand, with
     * variances 1, 4 and the detail's 4 along x: the sum a + b + t = 9, so -1/9 and +4/9 of the shift; the variances left
     * are a - a a / 9 and b - b b / 9.
     */
    @Test
    void sharesTheCorrectionByVariance() {
        List<Shift> found = Fusion.corrections(List.of(1.0, 2.0), List.of(new Link(0, 1, new Shift(0.9, -1.8, 2, 1))));
        assertShift(new Shift(-0.1, 0.3, Math.sqrt(1 - 1 / 9.0), Math.sqrt(1 - 1 / 6.0)), found.get(0));
        assertShift(new Shift(0.4, -1.2, Math.sqrt(4 - 16 / 9.0), Math.sqrt(4 - 16 / 6.0)), found.get(1));
    }

    /** Detail without error: frames lie exactly as it says, all of them where the limbs together say. */
    @Test
    void givesInToPerfectDetail() {
        double perfect = 1e-5;
        List<Shift> found = Fusion.corrections(
                List.of(0.2, 0.2, 0.2),
                List.of(
                        new Link(0, 1, new Shift(0.3, 0, perfect, perfect)),
                        new Link(0, 2, new Shift(0.6, 0, perfect, perfect))));
        double common = 0.2 / Math.sqrt(3);
        for (int i = 0; i < 3; i++) {
            assertEquals(0.3 * (i - 1), found.get(i).x(), 1e-6);
            assertEquals(common, found.get(i).sigmaX(), 1e-6);
        }
    }

    /** A chain whose two roads to the same frame differ: 0 to 2 directly, and over 1. All limbs know nothing. */
    @Test
    void takesTheMeanOfTwoRoads() {
        double nothing = 1e3;
        List<Shift> found = Fusion.corrections(
                List.of(1e-4, nothing, nothing),
                List.of(
                        new Link(0, 1, new Shift(1, 0, 0.1, 0.1)),
                        new Link(1, 2, new Shift(1, 0, 0.1, 0.1)),
                        new Link(0, 2, new Shift(2.3, 0, 0.1, 0.1))));
        // The misclosure of 0.3 falls on three equal links, 0.1 each.
        assertEquals(1.1, found.get(1).x(), 1e-4);
        assertEquals(2.2, found.get(2).x(), 1e-4);
        // The direct road's variance of 0.01 beside the other's 0.02.
        assertEquals(Math.sqrt(1 / (1 / 0.01 + 1 / 0.02)), found.get(2).sigmaX(), 1e-4);
    }

    /** Drawn by the very errors that are stated, the corrected centres must scatter by what is stated. */
    @Test
    void statesTheScatterOfItsAnswers() {
        Random random = new Random(12);
        List<Double> limb = List.of(0.1, 0.25, 0.15);
        int trials = 4000;
        double[] squares = new double[3];
        for (int trial = 0; trial < trials; trial++) {
            double[] error = new double[3];
            for (int i = 0; i < 3; i++) {
                error[i] = limb.get(i) * random.nextGaussian();
            }
            List<Link> links = new ArrayList<>();
            for (int to = 1; to < 3; to++) {
                double apart = error[0] - error[to] + 0.05 * random.nextGaussian();
                links.add(new Link(0, to, new Shift(apart, 0, 0.05, 0.05)));
            }
            List<Shift> found = Fusion.corrections(limb, links);
            for (int i = 0; i < 3; i++) {
                double left = (error[i] + found.get(i).x()) / found.get(i).sigmaX();
                squares[i] += left * left / trials;
            }
        }
        for (double s : squares) {
            assertEquals(1, s, 0.07); // three standard errors of a variance from 4000 draws
        }
    }

    private static void assertShift(Shift expected, Shift found) {
        assertEquals(expected.x(), found.x(), ROUNDING);
        assertEquals(expected.y(), found.y(), ROUNDING);
        assertEquals(expected.sigmaX(), found.sigmaX(), ROUNDING);
        assertEquals(expected.sigmaY(), found.sigmaY(), ROUNDING);
    }
}
