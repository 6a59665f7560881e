package org.epochrome.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OklabTest {
    /** Against the Java library's cube root, which is right to the last digit. */
    @Test
    void cubeRootsAreTheLibrarys() {
        Random random = new Random(8);
        for (int i = 0; i < 100_000; i++) {
            double v = (random.nextBoolean() ? 1 : -1) * Math.pow(10, 40 * random.nextDouble() - 30);
            double root = Math.cbrt(v);
            assertEquals(root, Oklab.cubeRoot(v), 1e-14 * Math.abs(root));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.0, 1e-320, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void soAreThoseOfUnusualNumbers(double v) {
        assertEquals(Math.cbrt(v), Oklab.cubeRoot(v));
    }

    /** Ottosson (2020): white has the lightness 1 and no colour. */
    @Test
    void whiteIsWhite() {
        double[] colour = {1, 1, 1};
        Oklab.fromLinear(colour);
        assertEquals(1, colour[0], 1e-7);
        assertEquals(0, colour[1], 1e-7);
        assertEquals(0, colour[2], 1e-7);
    }
}
