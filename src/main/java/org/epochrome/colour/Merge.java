package org.epochrome.colour;

import java.util.Arrays;
import java.util.List;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * The weighted mean of planes, pixel by pixel. From four planes on, values far off the weighted median are left out:
 * they are a moon that passed, a cosmic ray or a hot pixel.
 */
public final class Merge {
    private static final int ROBUST_FROM = 4;
    private static final double OUTLIER = 4;

    private Merge() {}

    /**
     * Merges planes of one size.
     *
     * @param planes at least one; NaN where one holds no data
     * @param weights of the same sizes, 0 or more
     * @return their mean; NaN where no plane holds data
     */
    public static Plane mean(List<Plane> planes, List<Plane> weights) {
        Plane result = new Plane(planes.get(0).width(), planes.get(0).height());
        int count = planes.size();
        Rows.each(result.height(), (from, to) -> {
            float[] values = new float[count];
            float[] value = new float[count];
            float[] weight = new float[count];
            for (int i = from * result.width(); i < to * result.width(); i++) {
                int n = 0;
                for (int k = 0; k < count; k++) {
                    float v = planes.get(k).data()[i];
                    if (!Float.isNaN(v)) {
                        value[n] = v;
                        weight[n] = Math.max(weights.get(k).data()[i], 1e-6f);
                        n++;
                    }
                }
                result.data()[i] = mean(value, weight, n, values);
            }
        });
        return result;
    }

    private static float mean(float[] value, float[] weight, int n, float[] scratch) {
        float low = Float.NEGATIVE_INFINITY;
        float high = Float.POSITIVE_INFINITY;
        if (n >= ROBUST_FROM) {
            System.arraycopy(value, 0, scratch, 0, n);
            float middle = median(scratch, n);
            for (int k = 0; k < n; k++) {
                scratch[k] = Math.abs(value[k] - middle);
            }
            float reach = (float) (OUTLIER * 1.4826) * median(scratch, n);
            if (reach > 0) {
                low = middle - reach;
                high = middle + reach;
            }
        }
        double sum = 0;
        double weights = 0;
        for (int k = 0; k < n; k++) {
            if (value[k] >= low && value[k] <= high) {
                sum += weight[k] * value[k];
                weights += weight[k];
            }
        }
        return n == 0 ? Float.NaN : (float) (sum / weights);
    }

    private static float median(float[] values, int n) {
        Arrays.sort(values, 0, n);
        return n % 2 == 1 ? values[n / 2] : 0.5f * (values[n / 2 - 1] + values[n / 2]);
    }
}
