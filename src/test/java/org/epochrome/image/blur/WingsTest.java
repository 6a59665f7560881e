package org.epochrome.image.blur;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;

class WingsTest {
    private static final int SIDE = 141;
    private static final double SIGMA_PX = 6;

    /** A Gaussian blur by its transfer function (Bracewell 2000, The Fourier Transform, ch. 6) and by direct convolution. */
    @Test
    void blursAsADirectConvolutionDoes() {
        Plane noise = noise();
        Plane direct = Gaussian.blur(noise, SIGMA_PX);
        Plane byTransfer = Wings.blurred(noise, SIGMA_PX)[0];
        // The direct kernel is cut at four standard deviations, where 1e-4 of it is left.
        assertArrayEquals(direct.data(), byTransfer.data(), 1e-4f);
    }

    /** What is spread again and again is a geometric series of ever wider Gaussians; their variances add. */
    @Test
    void spreadsAgainWhatWasSpread() {
        double part = 0.2;
        Plane star = new Plane(SIDE, SIDE);
        star.set(SIDE / 2, SIDE / 2, 1000);
        Plane seen = Wings.of(new double[] {SIGMA_PX}, new double[] {part}).of(star);
        Plane expected = new Plane(SIDE, SIDE);
        for (int times = 0; times < 9; times++) {
            Plane term = times == 0 ? star : Wings.blurred(star, SIGMA_PX * Math.sqrt(times))[0];
            for (int i = 0; i < expected.data().length; i++) {
                expected.data()[i] += (float) ((1 - part) * Math.pow(part, times)) * term.data()[i];
            }
        }
        assertArrayEquals(expected.data(), seen.data(), 0.005f);
    }

    @Test
    void keepsTheLight() {
        Plane star = new Plane(SIDE, SIDE);
        star.set(SIDE / 2, SIDE / 2, 1);
        Plane seen =
                Wings.of(new double[] {2, SIGMA_PX}, new double[] {0.15, 0.05}).of(star);
        double sum = 0;
        for (float v : seen.data()) {
            sum += v;
        }
        assertEquals(1, sum, 1e-4);
    }

    /** Halos and the negative lobes of sharpened frames alike. */
    @Test
    void canBeTakenOffAgain() {
        Plane core = Gaussian.blur(noise(), 2);
        for (double part : new double[] {0.2, -0.5}) {
            Wings wings = Wings.of(new double[] {SIGMA_PX}, new double[] {part});
            Plane back = wings.without(wings.of(core));
            for (int y = 30; y < SIDE - 30; y++) {
                for (int x = 30; x < SIDE - 30; x++) {
                    assertEquals(core.at(x, y), back.at(x, y), 1e-6, "at " + x + ", " + y);
                }
            }
        }
    }

    @Test
    void refusesLightThatGrowsByBeingSpread() {
        double[] width = {SIGMA_PX};
        assertThrows(IllegalArgumentException.class, () -> Wings.of(width, new double[] {1.2}));
        assertEquals(0.8, Wings.held(width, new double[] {1.2})[0], 1e-9);
        assertEquals(-3, Wings.held(width, new double[] {-3})[0], 1e-9);
        assertEquals(Wings.NONE, Wings.of(width, new double[] {0}));
    }

    private static Plane noise() {
        Random random = new Random(5);
        Plane plane = new Plane(SIDE, SIDE);
        for (int y = 40; y < SIDE - 40; y++) {
            for (int x = 40; x < SIDE - 40; x++) {
                plane.set(x, y, (float) random.nextGaussian());
            }
        }
        return plane;
    }
}
