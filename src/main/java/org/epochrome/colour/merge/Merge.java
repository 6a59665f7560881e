package org.epochrome.colour.merge;

import java.util.Arrays;
import java.util.List;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * The weighted mean of planes, pixel by pixel. From four planes on, values far off the weighted median are left out:
 * they are a moon that passed, a cosmic ray or a hot pixel. Far is measured by the values' own scatter, and never taken for
 * less than the noise, or the chance likeness of a few values would cost good ones.
 */
public final class Merge {
    private static final int ROBUST_FROM = 4;
    private static final double OUTLIER = 4;
    /** Standard deviation of a Gaussian by its median absolute deviation. */
    private static final double SIGMAS = 1.4826;

    /** Part of the weight from which on values far off are another opinion, not outliers. */
    private static final double MINORITY = 0.3;

    private static final float LEAST_WEIGHT = 1e-9f;
    /** Part of the largest weight from which a plane counts as covering a pixel. */
    private static final float COVERING = 0.1f;

    private Merge() {}

    /**
     * A merged plane.
     *
     * @param mean NaN where no layer holds data
     * @param coverage how well it is founded
     */
    public record Merged(Plane mean, Coverage coverage) {}

    /** Merges layers of one size, at least one; a single one is its own mean. */
    public static Merged of(List<Layer> layers) {
        if (layers.size() == 1) {
            return alone(layers.get(0));
        }
        int width = layers.get(0).picture().width();
        int height = layers.get(0).picture().height();
        Plane mean = new Plane(width, height);
        Plane frames = new Plane(width, height);
        Plane weight = new Plane(width, height);
        Rows.each(height, (from, to) -> {
            Values values = new Values(layers.size());
            for (int i = from * width; i < to * width; i++) {
                values.clear();
                for (Layer layer : layers) {
                    values.add(layer.picture().data()[i], layer.weight().data()[i], layer.noise());
                }
                mean.data()[i] = values.mean();
                frames.data()[i] = values.covering;
                weight.data()[i] = values.total;
            }
        });
        return new Merged(mean, new Coverage(frames, weight));
    }

    private static Merged alone(Layer layer) {
        Plane mean = layer.picture();
        Plane frames = new Plane(mean.width(), mean.height());
        Plane weight = new Plane(mean.width(), mean.height());
        for (int i = 0; i < mean.data().length; i++) {
            if (!Float.isNaN(mean.data()[i])) {
                frames.data()[i] = 1;
                weight.data()[i] = Math.max(layer.weight().data()[i], LEAST_WEIGHT);
            }
        }
        return new Merged(mean, new Coverage(frames, weight));
    }

    /** The values of a pixel. */
    private static final class Values {
        private final float[] value;
        private final float[] weight;
        private final float[] noise;
        private final long[] order;
        private int count;
        private int covering;
        private float total;

        Values(int most) {
            value = new float[most];
            weight = new float[most];
            noise = new float[most];
            order = new long[most];
        }

        void clear() {
            count = 0;
        }

        void add(float v, float w, float sigma) {
            if (!Float.isNaN(v)) {
                value[count] = v;
                weight[count] = Math.max(w, LEAST_WEIGHT);
                noise[count] = sigma;
                count++;
            }
        }

        float mean() {
            float middle = 0;
            float reach = Float.POSITIVE_INFINITY;
            if (count >= ROBUST_FROM) {
                middle = median(0, false);
                float scatter = (float) SIGMAS * median(middle, true);
                reach = scatter > 0 ? (float) OUTLIER * scatter : Float.POSITIVE_INFINITY;
                reach = outvoted(middle, reach) ? reach : Float.POSITIVE_INFINITY;
            }
            double sum = 0;
            double weights = 0;
            float heaviest = 0;
            for (int k = 0; k < count; k++) {
                if (used(k, middle, reach)) {
                    sum += weight[k] * value[k];
                    weights += weight[k];
                    heaviest = Math.max(heaviest, weight[k]);
                }
            }
            covering = 0;
            for (int k = 0; k < count; k++) {
                covering += used(k, middle, reach) && weight[k] >= COVERING * heaviest ? 1 : 0;
            }
            total = (float) weights;
            return count == 0 ? Float.NaN : (float) (sum / weights);
        }

        /** Whether what would be left out is too little to be another opinion. */
        private boolean outvoted(float middle, float reach) {
            double out = 0;
            double all = 0;
            for (int k = 0; k < count; k++) {
                out += used(k, middle, reach) ? 0 : weight[k];
                all += weight[k];
            }
            return out < MINORITY * all;
        }

        private boolean used(int k, float middle, float reach) {
            return Math.abs(value[k] - middle) <= Math.max(reach, (float) OUTLIER * noise[k]);
        }

        /** The weighted median of the values, or of their distances from a middle. */
        private float median(float middle, boolean distances) {
            double half = 0;
            for (int k = 0; k < count; k++) {
                float v = distances ? Math.abs(value[k] - middle) : value[k];
                order[k] = ((long) sortable(v) << 32) | k;
                half += 0.5 * weight[k];
            }
            Arrays.sort(order, 0, count);
            double below = 0;
            for (int i = 0; i < count; i++) {
                int k = (int) order[i];
                below += weight[k];
                if (below > half * (1 + 1e-6)) {
                    return number(order[i]);
                }
                if (below > half * (1 - 1e-6) && i + 1 < count) {
                    return 0.5f * (number(order[i]) + number(order[i + 1]));
                }
            }
            return number(order[count - 1]);
        }

        /** Bits of a float that sort as integers do. */
        private static int sortable(float v) {
            int bits = Float.floatToRawIntBits(v);
            return bits ^ ((bits >> 31) & 0x7fffffff);
        }

        private static float number(long entry) {
            int bits = (int) (entry >> 32);
            return Float.intBitsToFloat(bits ^ ((bits >> 31) & 0x7fffffff));
        }
    }
}
