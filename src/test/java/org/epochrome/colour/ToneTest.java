package org.epochrome.colour;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToneTest {
    /** Ottosson 2020, the table of test values: tristimulus values and OKLab to three decimals. */
    @ParameterizedTest
    @CsvSource({
        "0.950,1.000,1.089,1.000,0.000,0.000",
        "1.000,0.000,0.000,0.450,1.236,-0.019",
        "0.000,1.000,0.000,0.922,-0.671,0.263",
        "0.000,0.000,1.000,0.153,-1.415,-0.449"
    })
    void oklabMatchesItsPublishedValues(double x, double y, double z, double lightness, double a, double b) {
        double[] colour = Srgb.fromXyz(new double[] {x, y, z});
        Oklab.fromLinear(colour);
        // Three decimals, and matrices of XYZ and of sRGB that agree to four.
        assertArrayEquals(new double[] {lightness, a, b}, colour, 1.5e-3);
    }

    @Test
    void oklabComesBack() {
        Random random = new Random(3);
        for (int i = 0; i < 200; i++) {
            double[] colour = {random.nextDouble(), random.nextDouble(), random.nextDouble()};
            double[] before = colour.clone();
            Oklab.fromLinear(colour);
            Oklab.toLinear(colour[0], colour[1], colour[2], colour);
            assertArrayEquals(before, colour, 1e-6);
        }
    }

    @Test
    void leavesMiddleTonesAloneByDefault() {
        double[] colour = {0.5, 0.3, 0.2};
        Tone.DEFAULT.apply(colour);
        assertArrayEquals(new double[] {0.5, 0.3, 0.2}, colour, 1e-6);
    }

    @ParameterizedTest
    @CsvSource({"0,1", "0.05,1", "0,1.6", "0,0.6", "0.1,2.5"})
    void curveRisesAndNeverReachesWhite(double black, double contrast) {
        Tone tone = new Tone(0.8, black, contrast, 1);
        double last = 0;
        for (double lightness = 0.01; lightness < 2.2; lightness += 0.01) {
            double shown = tone.curve(lightness);
            assertTrue(last == 0 || shown > last - 1e-12, "falls at " + lightness);
            assertTrue(shown <= 1, "above white at " + lightness);
            last = shown;
        }
        assertEquals(0, tone.curve(-0.1));
        assertTrue(last > 0.98);
    }

    @Test
    void contrastIsTheSlopeAtItsPivot() {
        Tone tone = new Tone(0.8, 0, 1.7, 1);
        assertEquals(0.66, tone.curve(0.66), 1e-12);
        assertEquals(1.7, (tone.curve(0.661) - tone.curve(0.659)) / 0.002, 1.5e-5);
    }

    /** Hue in OKLab stays whatever is done to lightness and chroma; it is also what reducing the chroma keeps. */
    @Test
    void keepsHues() {
        Random random = new Random(9);
        Tone tone = new Tone(0.8, 0.03, 1.4, 1.8);
        for (int i = 0; i < 500; i++) {
            double[] colour = {
                0.02 + 1.3 * random.nextDouble(), 0.02 + 1.3 * random.nextDouble(), 0.02 + 1.3 * random.nextDouble()
            };
            double[] before = colour.clone();
            Oklab.fromLinear(before);
            tone.apply(colour);
            for (double part : colour) {
                assertTrue(part > -1e-6 && part < 1 + 1e-6, "out of gamut: " + part);
            }
            double[] after = colour.clone();
            Oklab.fromLinear(after);
            double turned = Math.atan2(after[2], after[1]) - Math.atan2(before[2], before[1]);
            double chroma = Math.hypot(after[1], after[2]);
            assertTrue(Math.abs(Math.sin(turned)) * chroma < 1e-4, "hue turned by " + turned);
        }
    }

    /** A red beyond the gamut loses strength, not lightness; clipping its parts would make it darker or pink. */
    @Test
    void reducesChromaInsteadOfClipping() {
        double[] colour = {0.7, 0.1, 0.02};
        double[] before = colour.clone();
        Oklab.fromLinear(before);
        new Tone(0.8, 0, 1, 3).apply(colour);
        double[] after = colour.clone();
        Oklab.fromLinear(after);
        assertEquals(before[0], after[0], 1e-5);
        assertTrue(Math.hypot(after[1], after[2]) > Math.hypot(before[1], before[2]), "still stronger than before");
    }

    @Test
    void saturationScalesChroma() {
        double[] colour = {0.4, 0.35, 0.3};
        double[] before = colour.clone();
        Oklab.fromLinear(before);
        new Tone(0.8, 0, 1, 1.5).apply(colour);
        Oklab.fromLinear(colour);
        assertEquals(1.5 * Math.hypot(before[1], before[2]), Math.hypot(colour[1], colour[2]), 1e-5);
        double[] grey = {0.4, 0.35, 0.3};
        new Tone(0.8, 0, 1, 0).apply(grey);
        assertEquals(grey[0], grey[2], 1e-6);
    }

    @Test
    void refusesWhatMakesNoSense() {
        assertThrows(IllegalArgumentException.class, () -> new Tone(1.2, 0, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Tone(0.8, Double.NaN, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Tone(0.8, 0, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> new Tone(0.8, 0, 1, -1));
    }

    /** The table against the formula, from the dark to beyond white; 1e-7 is a hundredth of a level of 16 bits. */
    @Test
    void fastEncodingIsTheExactOne() {
        for (double linear = -0.01; linear < 1.3; linear += 1.7e-5) {
            assertEquals(Srgb.encode(linear), Srgb.encodeFast(linear), 1e-7, "at " + linear);
        }
    }

    /** Chroma as high as the gamut allows: a little more no longer fits. */
    @Test
    void gamutIsUsedToItsEdge() {
        Random random = new Random(5);
        double[] colour = new double[3];
        for (int i = 0; i < 2000; i++) {
            double lightness = random.nextDouble();
            double a = random.nextDouble() - 0.5;
            double b = random.nextDouble() - 0.5;
            Gamut.fit(lightness, a, b, colour);
            double least = Math.min(colour[0], Math.min(colour[1], colour[2]));
            double most = Math.max(colour[0], Math.max(colour[1], colour[2]));
            assertTrue(least >= -1e-8 && most <= 1 + 1e-8, least + " to " + most);
            double[] asked = new double[3];
            Oklab.toLinear(lightness, a, b, asked);
            boolean fits = Arrays.stream(asked).allMatch(v -> v >= 0 && v <= 1);
            if (fits) {
                assertArrayEquals(asked, colour);
            } else {
                assertTrue(least < 1e-6 || most > 1 - 1e-6, "within the gamut: " + least + " to " + most);
            }
        }
    }
}
