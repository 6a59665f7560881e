package org.epochrome.image.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;

class StarletTest {
    private static final int SIDE = 256;

    @Test
    void addsUpToThePlane() {
        Plane plane = noise(40, 30);
        Starlet starlet = Starlet.of(plane, 4);
        for (int i = 0; i < plane.data().length; i++) {
            double sum = starlet.rest().data()[i];
            for (Plane detail : starlet.details()) {
                sum += detail.data()[i];
            }
            assertEquals(plane.data()[i], sum, 1e-5);
        }
    }

    /** Starck & Murtagh's table of noise by scale, measured: 65536 pixels, and fewer independent ones per scale. */
    @Test
    void whiteNoiseSplitsAsInTheTable() {
        Starlet starlet = Starlet.of(noise(SIDE, SIDE), 5);
        double[] tolerance = {0.01, 0.02, 0.04, 0.07, 0.15};
        for (int j = 0; j < 5; j++) {
            double squares = 0;
            for (float v : starlet.details().get(j).data()) {
                squares += v * v;
            }
            double found = Math.sqrt(squares / (SIDE * SIDE));
            assertEquals(1, found / Starlet.whiteNoise(j), tolerance[j], "scale " + j);
        }
    }

    /** The first scale of a single bright pixel is 1 - (6/16)^2 there. */
    @Test
    void aPointGivesTheKernel() {
        Plane plane = new Plane(9, 9);
        plane.set(4, 4, 1);
        Starlet starlet = Starlet.of(plane, 1);
        assertEquals(1 - 36 / 256.0, starlet.details().get(0).at(4, 4), 1e-7);
        assertEquals(-24 / 256.0, starlet.details().get(0).at(5, 4), 1e-7);
        assertEquals(-1 / 256.0, starlet.details().get(0).at(6, 6), 1e-7);
    }

    private static Plane noise(int width, int height) {
        Random random = new Random(8);
        Plane plane = new Plane(width, height);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = (float) random.nextGaussian();
        }
        return plane;
    }
}
