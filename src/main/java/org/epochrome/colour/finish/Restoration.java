package org.epochrome.colour.finish;

import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
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
        int width = seen.width();
        // The blur takes everything outside the plane for zero.
        Plane within = Gaussian.blur(Plane.filled(width, seen.height(), 1), blurPx);
        for (int n = 0; n < iterations; n++) {
            Plane predicted = Gaussian.blur(product(light, markings), blurPx);
            Plane ratio = new Plane(width, seen.height());
            Rows.each(seen.height(), (from, to) -> {
                for (int i = from * width; i < to * width; i++) {
                    float expected = predicted.data()[i] / within.data()[i];
                    // Minus 1, so that outside nothing is corrected.
                    ratio.data()[i] = expected > FAINT ? Math.max(0, seen.data()[i]) / expected - 1 : 0;
                }
            });
            Plane correction = Gaussian.blur(ratio, blurPx);
            Plane bend = smoothing > 0 ? bend(markings, grain) : new Plane(width, seen.height());
            Rows.each(seen.height(), (from, to) -> {
                for (int i = from * width; i < to * width; i++) {
                    markings.data()[i] *= (1 + correction.data()[i]) / (float) (1 - smoothing * bend.data()[i]);
                }
            });
        }
        return markings;
    }

    private static Plane product(Plane a, Plane b) {
        Plane product = a.copy();
        for (int i = 0; i < product.data().length; i++) {
            product.data()[i] *= b.data()[i];
        }
        return product;
    }

    /** The divergence of the direction of steepest rise: what total variation pulls by, at most about 4 per pixel. */
    private static Plane bend(Plane plane, double grain) {
        int width = plane.width();
        int height = plane.height();
        float[] v = plane.data();
        Plane right = new Plane(width, height);
        Plane down = new Plane(width, height);
        float least = (float) (grain * grain) + 1e-12f;
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < width; x++) {
                    int i = y * width + x;
                    float dx = x + 1 < width ? v[i + 1] - v[i] : 0;
                    float dy = y + 1 < height ? v[i + width] - v[i] : 0;
                    float length = (float) Math.sqrt(dx * dx + dy * dy + least);
                    right.data()[i] = dx / length;
                    down.data()[i] = dy / length;
                }
            }
        });
        Plane bend = new Plane(width, height);
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < width; x++) {
                    int i = y * width + x;
                    bend.data()[i] = right.data()[i]
                            - (x > 0 ? right.data()[i - 1] : 0)
                            + down.data()[i]
                            - (y > 0 ? down.data()[i - width] : 0);
                }
            }
        });
        return bend;
    }
}
