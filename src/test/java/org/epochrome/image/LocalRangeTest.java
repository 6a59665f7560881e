package org.epochrome.image;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LocalRangeTest {
    private static final int WIDTH = 37;
    private static final int HEIGHT = 23;

    private static Plane holed() {
        Random random = new Random(4);
        Plane plane = new Plane(WIDTH, HEIGHT);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = random.nextInt(5) == 0 ? Float.NaN : (float) random.nextGaussian();
        }
        for (int y = 4; y < 16; y++) {
            for (int x = 10; x < 22; x++) {
                plane.set(x, y, Float.NaN);
            }
        }
        return plane;
    }

    /** Least value around a pixel, or largest for a sign of -1, by looking at each. */
    private static float extreme(Plane plane, int x, int y, int reach, int sign) {
        float found = Float.NaN;
        for (int j = Math.max(0, y - reach); j <= Math.min(HEIGHT - 1, y + reach); j++) {
            for (int i = Math.max(0, x - reach); i <= Math.min(WIDTH - 1, x + reach); i++) {
                float v = plane.at(i, j);
                found = Float.isNaN(found) || sign * v < sign * found ? v : found;
            }
        }
        return found;
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 5, 8, 40})
    void findsWhatLookingAtEachPixelFinds(int reach) {
        Plane plane = holed();
        float[] least = new float[WIDTH * HEIGHT];
        float[] most = new float[WIDTH * HEIGHT];
        for (int i = 0; i < least.length; i++) {
            least[i] = extreme(plane, i % WIDTH, i / WIDTH, reach, 1);
            most[i] = extreme(plane, i % WIDTH, i / WIDTH, reach, -1);
        }
        LocalRange range = LocalRange.of(plane, reach);
        assertArrayEquals(least, range.least().data());
        assertArrayEquals(most, range.most().data());
    }
}
