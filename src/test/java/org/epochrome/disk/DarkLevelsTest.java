package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DarkLevelsTest {
    private static final Globe GLOBE = new Globe(0.935, 0.05, 1, 0, 0);
    private static final Disk DISK = new Disk(120.3, 119.1, 80, 20, false);
    private static final int SIDE = 240;
    private static final double BRIGHTNESS = 0.8;
    private static final Shading SHADING = new Shading(0.9, 2, Smear.NONE);

    /** A globe whose sky lies so far above black, with some noise. */
    private static Plane light(double sky, double noise) {
        Plane plane = SHADING.picture(new View(GLOBE, DISK), SIDE, SIDE);
        Random random = new Random(11);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = (float) (sky + BRIGHTNESS * plane.data()[i] + noise * random.nextGaussian());
        }
        return plane;
    }

    /** Cut off at black, and raised to the inverse of a power. */
    private static Plane encoded(Plane light, double gamma) {
        for (int i = 0; i < light.data().length; i++) {
            light.data()[i] = (float) Math.pow(Math.max(0, light.data()[i]), 1 / gamma);
        }
        return light;
    }

    private static DarkLevels of(Plane plane) {
        return DarkLevels.of(
                plane,
                GLOBE,
                new FittedDisk(DISK, SHADING, 0, BRIGHTNESS, 0.001, new FitErrors(0.05, 0.05, 0.1), 0.003));
    }

    /** An edge that crosses the cut gives all levels above it the same area, or brighter ones less. */
    @ParameterizedTest
    @CsvSource({"-0.02, 0", "-0.05, 0.001", "0, 0.001", "0, 0.01"})
    void linearLevelsAreAsFrequentAsBrighterOnes(double sky, double noise) {
        DarkLevels dark = of(encoded(light(sky, noise), 1));
        assertEquals(sky < 0 ? 1 : 0.5, dark.cutPart(), 0.02);
        assertTrue(dark.exponent() > 0 && dark.exponent() < 1.1, "exponent " + dark.exponent());
    }

    /** The area below a level is that below its light, which grows with the power of the curve as long as the light is next to the cut. */
    @ParameterizedTest
    @CsvSource({"0, 0.01, 1.8", "0, 0.01, 2.2", "-0.05, 0, 2.2", "-0.05, 0, 1.8"})
    void encodedLevelsShowTheCurve(double sky, double noise, double gamma) {
        double exponent = of(encoded(light(sky, noise), gamma)).exponent();
        assertTrue(exponent > 0.75 * gamma && exponent < 1.1 * gamma, "exponent " + exponent);
    }

    /** Above a least value that a threshold or a mask made there is a gap, and then levels as frequent as brighter ones. */
    @ParameterizedTest
    @CsvSource({"0.011", "0.016", "0.025"})
    void thresholdsAreNoCurves(double threshold) {
        Plane plane = light(0.005, 0.001);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = plane.data()[i] < threshold ? 0 : plane.data()[i];
        }
        assertEquals(1, of(plane).cutPart(), 1e-6);
        assertFalse(of(plane).exponent() > 1.1, "exponent " + of(plane).exponent());
    }

    @Test
    void anUncutSkyHasNoLeastValueInCommon() {
        assertEquals(0, of(light(0.01, 0.001)).cutPart(), 1e-6);
    }
}
