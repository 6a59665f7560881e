package org.epochrome.colour.finish;

import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.RowRuns;
import org.epochrome.job.Rows;

/**
 * Richardson and Lucy's restoration (Richardson 1972, J. Opt. Soc. Am. 62, 55; Lucy 1974, AJ 79, 745) with total
 * variation (Dey et al. 2006, Microsc. Res. Tech. 69, 260), of a globe whose light without markings is known. What is
 * restored are the markings, as factors on that light: its steep limb belongs to the light and cannot ring.
 */
final class Restoration {
    private static final float FAINT = 1e-4f;

    private Restoration() {}

    /**
     * The markings of a picture whose blur is smaller.
     *
     * @param seen the picture with its markings
     * @param light the globe without markings, blurred as the result shall be
     * @param start markings to begin with
     * @param blurPx what lies between the two blurs, standard deviation, pixels
     * @param smoothing weight of total variation
     * @param grain markings that are not distinguished from noise: gradients below count as none
     */
    static Plane markings(
            Plane seen, Plane light, Plane start, double blurPx, int iterations, double smoothing, double grain) {
        Plane markings = start.copy();
        float[] v = markings.data();
        int width = seen.width();
        int height = seen.height();
        RowRuns all = RowRuns.where(width, height, (x, y) -> true);
        // The blur takes everything outside the plane for zero.
        float[] within =
                Gaussian.blur(Plane.filled(width, height, 1), blurPx, all).data();
        Plane expected = new Plane(width, height);
        Gradient gradient = new Gradient(markings, grain);
        for (int n = 0; n < iterations; n++) {
            Rows.each(height, (from, to) -> {
                for (int i = from * width; i < to * width; i++) {
                    expected.data()[i] = light.data()[i] * v[i];
                }
            });
            Plane predicted = Gaussian.blur(expected, blurPx, all);
            float[] ratio = predicted.data();
            Rows.each(height, (from, to) -> {
                for (int i = from * width; i < to * width; i++) {
                    float there = ratio[i] / within[i];
                    // Minus 1, so that outside nothing is corrected.
                    ratio[i] = there > FAINT ? Math.max(0, seen.data()[i]) / there - 1 : 0;
                }
            });
            float[] correction = Gaussian.blur(predicted, blurPx, all).data();
            if (smoothing > 0) {
                gradient.measure();
            }
            Rows.each(height, (from, to) -> {
                for (int y = from; y < to; y++) {
                    gradient.correct(y, correction, (float) smoothing);
                }
            });
        }
        return markings;
    }

    /** The direction of steepest rise, whose divergence is what total variation pulls by, at most about 4 per pixel. */
    private static final class Gradient {
        private final int width;
        private final int height;
        private final float[] v;
        private final float[] right;
        private final float[] down;
        private final float least;

        Gradient(Plane plane, double grain) {
            width = plane.width();
            height = plane.height();
            v = plane.data();
            right = new float[v.length];
            down = new float[v.length];
            least = (float) (grain * grain) + 1e-12f;
        }

        void measure() {
            Rows.each(height, (from, to) -> {
                for (int y = from; y < to; y++) {
                    int row = y * width;
                    int below = y + 1 < height ? row + width : row;
                    for (int x = 0; x < width - 1; x++) {
                        float dx = v[row + x + 1] - v[row + x];
                        float dy = v[below + x] - v[row + x];
                        float length = (float) Math.sqrt(dx * dx + dy * dy + least);
                        right[row + x] = dx / length;
                        down[row + x] = dy / length;
                    }
                    int last = row + width - 1;
                    float dy = v[below + width - 1] - v[last];
                    right[last] = 0;
                    down[last] = dy / (float) Math.sqrt(dy * dy + least);
                }
            });
        }

        /** Multiplies a row by its correction and smooths it. */
        void correct(int y, float[] correction, float smoothing) {
            int row = y * width;
            v[row] *= (1 + correction[row]) / (1 - smoothing * (right[row] + bendDown(y, 0)));
            if (y == 0) {
                for (int x = 1; x < width; x++) {
                    int i = row + x;
                    v[i] *= (1 + correction[i]) / (1 - smoothing * (right[i] - right[i - 1] + down[i]));
                }
            } else {
                for (int x = 1; x < width; x++) {
                    int i = row + x;
                    float bend = right[i] - right[i - 1] + down[i] - down[i - width];
                    v[i] *= (1 + correction[i]) / (1 - smoothing * bend);
                }
            }
        }

        private float bendDown(int y, int x) {
            int i = y * width + x;
            return down[i] - (y > 0 ? down[i - width] : 0);
        }
    }
}
