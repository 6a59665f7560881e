package org.epochrome.image;

import java.util.Arrays;
import org.apache.commons.math3.util.KthSelector;

/**
 * The values of a plane but for a thousandth at each end, which may be struck pixels.
 *
 * @param least the darkest; NaN if there are no data
 * @param most the brightest; NaN if there are no data
 * @param step the smallest difference between values: a grey level of whole numbers; 0 if there are too many different values for
 *     that, as among floats
 */
public record ValueRange(float least, float most, float step) {
    private static final double AT_EACH_END = 0.001;
    /** Different values from which no step is looked for: whole numbers of 16 bits have no more. */
    private static final int MOST_LEVELS = 1 << 16;

    /** Looks at all values of a plane. */
    public static ValueRange of(Plane plane) {
        double[] values = values(plane.data());
        int n = values.length;
        if (n == 0) {
            return new ValueRange(Float.NaN, Float.NaN, Float.NaN);
        }
        KthSelector selector = new KthSelector();
        float least = (float) selector.select(values, null, (int) (AT_EACH_END * (n - 1)));
        float most = (float) selector.select(values, null, (int) ((1 - AT_EACH_END) * (n - 1)));
        return new ValueRange(least, most, step(plane.data()));
    }

    /** From the darkest to the brightest. */
    public double width() {
        return most - least;
    }

    /** The value a part of the way up, 0 to 1. */
    public double at(double part) {
        return least + part * width();
    }

    /** The values that are not NaN. */
    private static double[] values(float[] data) {
        double[] values = new double[data.length];
        int n = 0;
        for (float value : data) {
            if (!Float.isNaN(value)) {
                values[n++] = value;
            }
        }
        return Arrays.copyOf(values, n);
    }

    private static float step(float[] data) {
        float[] levels = levels(data);
        Arrays.sort(levels);
        float step = levels.length < 2 ? Float.POSITIVE_INFINITY : levels[1] - levels[0];
        for (int i = 2; i < levels.length; i++) {
            step = Math.min(step, levels[i] - levels[i - 1]);
        }
        return levels.length > MOST_LEVELS ? 0 : step;
    }

    /** The different values that are not NaN, or one more than is looked at. */
    private static float[] levels(float[] data) {
        // Four times as many places as values; a value that finds its place taken goes to the next one.
        int mask = 4 * MOST_LEVELS - 1;
        float[] places = new float[mask + 1];
        Arrays.fill(places, Float.NaN);
        float[] levels = new float[MOST_LEVELS + 1];
        int n = 0;
        for (int i = 0; i < data.length && n <= MOST_LEVELS; i++) {
            float value = data[i] + 0f;
            if (Float.isNaN(value)) {
                continue;
            }
            int hash = Float.floatToIntBits(value) * 0x9e3779b9;
            int place = (hash >>> 8) & mask;
            while (places[place] != value && !Float.isNaN(places[place])) {
                place = (place + 1) & mask;
            }
            if (Float.isNaN(places[place])) {
                places[place] = value;
                levels[n++] = value;
            }
        }
        return Arrays.copyOf(levels, n);
    }
}
