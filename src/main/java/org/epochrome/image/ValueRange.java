package org.epochrome.image;

import java.util.Arrays;

/**
 * The values of a plane but for a thousandth at each end, which may be struck pixels.
 *
 * @param least the darkest; NaN if there are no data
 * @param most the brightest; NaN if there are no data
 * @param step the smallest difference between values: a grey level of whole numbers, next to nothing of floats
 */
public record ValueRange(float least, float most, float step) {
    private static final double AT_EACH_END = 0.001;

    /** Looks at all values of a plane. */
    public static ValueRange of(Plane plane) {
        float[] sorted = sorted(plane.data());
        int n = sorted.length;
        if (n == 0) {
            return new ValueRange(Float.NaN, Float.NaN, Float.NaN);
        }
        float step = Float.POSITIVE_INFINITY;
        for (int i = 1; i < n; i++) {
            float by = sorted[i] - sorted[i - 1];
            step = by > 0 && by < step ? by : step;
        }
        return new ValueRange(sorted[(int) (AT_EACH_END * (n - 1))], sorted[(int) ((1 - AT_EACH_END) * (n - 1))], step);
    }

    /** From the darkest to the brightest. */
    public double width() {
        return most - least;
    }

    /** The value a part of the way up, 0 to 1. */
    public double at(double part) {
        return least + part * width();
    }

    /** The values that are not NaN, in ascending order. */
    private static float[] sorted(float[] values) {
        float[] sorted = new float[values.length];
        int n = 0;
        for (float value : values) {
            if (!Float.isNaN(value)) {
                sorted[n++] = value;
            }
        }
        Arrays.sort(sorted, 0, n);
        return Arrays.copyOf(sorted, n);
    }
}
