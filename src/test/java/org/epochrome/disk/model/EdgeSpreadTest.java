package org.epochrome.disk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.commons.math3.special.Erf;
import org.epochrome.disk.Shading;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.Wings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EdgeSpreadTest {
    private static final double BLUR = 2;
    private static final double WIDTH = 5;

    private static Shading shading(double... parts) {
        return new Shading(1, 0, BLUR, Smear.NONE, Wings.of(new double[] {WIDTH, 4 * WIDTH}, parts));
    }

    /**
     * Light that is spread again and again is a geometric series of Gaussians, each with an edge in closed form:
     * {@code sum (1 - v) v^n erfc(x / sqrt(2 (s^2 + n w^2))) / 2}.
     */
    private static double series(double part, double awayPx) {
        double sum = 0;
        double factor = 1 - part;
        for (int n = 0; n < 60; n++) {
            double sigma = Math.sqrt(BLUR * BLUR + n * WIDTH * WIDTH);
            sum += factor * 0.5 * Erf.erfc(awayPx / (Math.sqrt(2) * sigma));
            factor *= part;
        }
        return sum;
    }

    /** The bound is what sampling the frequencies leaves. */
    @ParameterizedTest
    @CsvSource({"0.3,0", "0.3,3", "0.3,12", "-0.4,1", "-0.4,5", "-0.4,9", "-0.4,20"})
    void agreesWithTheSeries(double part, double awayPx) {
        assertEquals(series(part, awayPx), EdgeSpread.dark(shading(part, 0), awayPx), 1e-7);
    }

    @Test
    void sharpeningLeavesADarkSeam() {
        double least = 0;
        for (double away = 0; away < 40; away += 0.25 * BLUR) {
            least = Math.min(least, series(-0.4, away));
        }
        assertEquals(-least, EdgeSpread.undershoot(shading(-0.4, 0)), 1e-7);
        assertEquals(0.05, -least, 0.04, "a seam that one would see");
    }

    @Test
    void aHaloLeavesNone() {
        assertEquals(0, EdgeSpread.undershoot(shading(0.3, 0.1)), 1e-6);
        assertEquals(0, EdgeSpread.undershoot(new Shading(1, BLUR, Smear.NONE)));
    }
}
