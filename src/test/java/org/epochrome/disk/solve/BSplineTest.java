package org.epochrome.disk.solve;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The weights against tabulated values and against the recurrence by which B-splines are defined. */
class BSplineTest {
    private static final double ROUNDING = 1e-15;

    /** Values at the knots and midway: de Boor 1978, A Practical Guide to Splines; Schoenberg 1946, Q. Appl. Math. 4, 45. */
    @Test
    void tabulatedValues() {
        assertArrayEquals(over(6, 1, 4, 1, 0), cubic(0), ROUNDING);
        assertArrayEquals(over(6, 0, 1, 4, 1), cubic(1), ROUNDING);
        assertArrayEquals(over(48, 1, 23, 23, 1), cubic(0.5), ROUNDING);
        assertArrayEquals(over(120, 1, 26, 66, 26, 1, 0), quintic(0), ROUNDING);
        assertArrayEquals(over(120, 0, 1, 26, 66, 26, 1), quintic(1), ROUNDING);
        assertArrayEquals(over(3840, 1, 237, 1682, 1682, 237, 1), quintic(0.5), ROUNDING);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.1, 0.25, 0.4, 0.5, 0.73, 0.999, 1})
    void recurrence(double f) {
        for (int i = 0; i < 4; i++) {
            assertEquals(deBoor(3, f + 3 - i), cubic(f)[i], ROUNDING);
        }
        for (int i = 0; i < 6; i++) {
            assertEquals(deBoor(5, f + 5 - i), quintic(f)[i], ROUNDING);
        }
    }

    /** Partition of unity, and straight lines stay straight (de Boor 1978, chapter IX, Marsden's identity). */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.1, 0.25, 0.5, 0.73, 1})
    void constantsAndLinesAreKept(double f) {
        assertEquals(1, Arrays.stream(cubic(f)).sum(), ROUNDING);
        assertEquals(1, Arrays.stream(quintic(f)).sum(), ROUNDING);
        assertEquals(f, mean(cubic(f), -1), 4 * ROUNDING);
        assertEquals(f, mean(quintic(f), -2), 4 * ROUNDING);
    }

    /** The uniform B-spline of a degree with support 0 to degree + 1, by the recurrence of Cox and de Boor. */
    private static double deBoor(int degree, double u) {
        if (degree == 0) {
            return u >= 0 && u < 1 ? 1 : 0;
        }
        return (u * deBoor(degree - 1, u) + (degree + 1 - u) * deBoor(degree - 1, u - 1)) / degree;
    }

    private static double mean(double[] weights, int first) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * (first + i);
        }
        return sum;
    }

    private static double[] cubic(double f) {
        double[] weights = new double[4];
        BSpline.cubic(f, weights);
        return weights;
    }

    private static double[] quintic(double f) {
        double[] weights = new double[6];
        BSpline.quintic(f, weights);
        return weights;
    }

    private static double[] over(double denominator, double... numerators) {
        return Arrays.stream(numerators).map(n -> n / denominator).toArray();
    }
}
