package org.epochrome.image;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ValueRangeTest {
    private static Plane noise(int levels) {
        Random random = new Random(levels);
        Plane plane = new Plane(300, 271);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = (float) Math.rint(levels * (0.5 + 0.1 * random.nextGaussian())) / levels;
        }
        plane.data()[77] = Float.NaN;
        plane.data()[78] = 9;
        return plane;
    }

    /** Against the values in order, by the library's sort. */
    @ParameterizedTest
    @ValueSource(ints = {2, 255, 4095, 65535})
    void greyLevels(int levels) {
        Plane plane = noise(levels);
        float[] sorted = plane.data().clone();
        Arrays.sort(sorted);
        int n = sorted.length - 1; // NaN comes last
        float step = Float.POSITIVE_INFINITY;
        for (int i = 1; i < n; i++) {
            step = sorted[i] > sorted[i - 1] ? Math.min(step, sorted[i] - sorted[i - 1]) : step;
        }
        ValueRange range = ValueRange.of(plane);
        assertEquals(sorted[(int) (0.001 * (n - 1))], range.least(), 0);
        assertEquals(sorted[(int) ((1 - 0.001) * (n - 1))], range.most(), 0);
        assertEquals(step, range.step(), 0);
    }

    @Test
    void floatsHaveNoStep() {
        Plane plane = new Plane(400, 400);
        Random random = new Random(3);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = random.nextFloat();
        }
        assertEquals(0, ValueRange.of(plane).step(), 0);
    }

    @Test
    void oneValueHasNoWidth() {
        Plane plane = new Plane(20, 20);
        Arrays.fill(plane.data(), 0.25f);
        ValueRange range = ValueRange.of(plane);
        assertEquals(0, range.width(), 0);
        assertEquals(Float.POSITIVE_INFINITY, range.step(), 0);
    }

    @Test
    void withoutDataThereIsNoRange() {
        Plane plane = new Plane(3, 3);
        Arrays.fill(plane.data(), Float.NaN);
        assertTrue(Double.isNaN(ValueRange.of(plane).width()));
    }
}
