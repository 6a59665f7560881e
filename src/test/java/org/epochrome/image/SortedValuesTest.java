package org.epochrome.image;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SortedValuesTest {
    /** By the bits, so that zeros of both signs count. */
    private static int[] bits(float[] values) {
        int[] bits = new int[values.length];
        for (int i = 0; i < bits.length; i++) {
            bits[i] = Float.floatToRawIntBits(values[i]);
        }
        return bits;
    }

    private static void sortsAsComparisonDoes(float[] values) {
        float[] before = values.clone();
        float[] expected = values.clone();
        Arrays.sort(expected);
        int n = expected.length;
        while (n > 0 && Float.isNaN(expected[n - 1])) {
            n--;
        }
        assertEquals(Arrays.toString(bits(Arrays.copyOf(expected, n))), Arrays.toString(bits(SortedValues.of(values))));
        assertEquals(Arrays.toString(bits(before)), Arrays.toString(bits(values)), "the values stay where they were");
    }

    @Test
    void anyBits() {
        Random random = new Random(11);
        float[] values = new float[20_000];
        for (int i = 0; i < values.length; i++) {
            values[i] = Float.intBitsToFloat(random.nextInt());
        }
        sortsAsComparisonDoes(values);
    }

    @Test
    void equalOnesZerosAndLimits() {
        sortsAsComparisonDoes(new float[] {3, 0f, -0f, 3, -3, Float.NaN, 0f, -0f, Float.MIN_VALUE, -Float.MIN_VALUE});
        sortsAsComparisonDoes(
                new float[] {Float.POSITIVE_INFINITY, 1, Float.NEGATIVE_INFINITY, Float.MAX_VALUE, -Float.MAX_VALUE});
        sortsAsComparisonDoes(new float[] {Float.NaN, Float.NaN});
        sortsAsComparisonDoes(new float[0]);
    }
}
