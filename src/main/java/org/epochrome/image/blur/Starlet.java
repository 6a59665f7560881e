package org.epochrome.image.blur;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * A plane split into detail by scale: the undecimated ("à trous") wavelet transform with the cubic B-spline (Starck &
 * Murtagh 2006, Astronomical Image and Data Analysis, section 1.5). Detail and remainder add up to the plane. Scale j
 * (from 1) holds structures of about 2^(j-1) to 2^j pixels. Beyond its edges the plane is mirrored. The plane must not
 * contain NaN.
 *
 * @param details from fine to coarse
 * @param rest what is coarser
 */
public record Starlet(List<Plane> details, Plane rest) {
    /**
     * Standard deviation of each scale for white noise of 1. Starck & Murtagh 2006, table 2.1, from memory; a test
     * measures them.
     */
    private static final double[] NOISE = {0.8908, 0.2007, 0.0856, 0.0413, 0.0205, 0.0103};

    private static final float OUTER = 1 / 16f;
    private static final float NEAR = 4 / 16f;
    private static final float MIDDLE = 6 / 16f;

    /**
     * Splits a plane.
     *
     * @param scales 1 to 6
     */
    public static Starlet of(Plane plane, int scales) {
        if (scales < 1 || scales > NOISE.length) {
            throw new IllegalArgumentException("A plane is split into 1 to " + NOISE.length + " scales.");
        }
        Scales all = new Scales(plane);
        List<Plane> details = new ArrayList<>();
        for (int j = 0; j < scales; j++) {
            details.add(all.next());
        }
        return new Starlet(List.copyOf(details), all.smooth);
    }

    /** Splits a plane scale by scale, from the finest, for callers that need not keep all scales of a large plane at once. */
    public static final class Scales {
        private Plane smooth;
        private int step = 1;

        public Scales(Plane plane) {
            smooth = plane;
        }

        /** The detail of the next scale. */
        public Plane next() {
            Plane smoother = smoothed(smooth, step);
            Plane detail = smooth.copy();
            for (int i = 0; i < detail.data().length; i++) {
                detail.data()[i] -= smoother.data()[i];
            }
            smooth = smoother;
            step *= 2;
            return detail;
        }
    }

    /** Standard deviation of a scale, from 0 for the finest, for white noise of standard deviation 1. */
    public static double whiteNoise(int scale) {
        return NOISE[scale];
    }

    /** The size of a scale's structures, from 0 for the finest, pixels. */
    public static double sizePx(int scale) {
        return Math.sqrt(2) * (1 << scale);
    }

    /** How far from a pixel others have a part in its finest scales, pixels. */
    public static int reachPx(int scales) {
        return 2 * ((1 << scales) - 1);
    }

    private static Plane smoothed(Plane plane, int step) {
        int width = plane.width();
        int height = plane.height();
        Plane across = new Plane(width, height);
        float[] in = plane.data();
        float[] middle = across.data();
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                int row = y * width;
                int left = Math.min(2 * step, width);
                int right = Math.max(left, width - 2 * step);
                mirrored(in, middle, row, 0, left, step, width);
                for (int i = row + left; i < row + right; i++) {
                    middle[i] = OUTER * (in[i - 2 * step] + in[i + 2 * step])
                            + NEAR * (in[i - step] + in[i + step])
                            + MIDDLE * in[i];
                }
                mirrored(in, middle, row, right, width, step, width);
            }
        });
        Plane result = new Plane(width, height);
        float[] out = result.data();
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                int up = mirror(y - step, height) * width;
                int top = mirror(y - 2 * step, height) * width;
                int down = mirror(y + step, height) * width;
                int bottom = mirror(y + 2 * step, height) * width;
                int row = y * width;
                for (int x = 0; x < width; x++) {
                    out[row + x] = OUTER * (middle[top + x] + middle[bottom + x])
                            + NEAR * (middle[up + x] + middle[down + x])
                            + MIDDLE * middle[row + x];
                }
            }
        });
        return result;
    }

    /** Smooths a part of a row next to its edges. */
    private static void mirrored(float[] in, float[] out, int row, int from, int to, int step, int width) {
        for (int x = from; x < to; x++) {
            out[row + x] = OUTER * (in[row + mirror(x - 2 * step, width)] + in[row + mirror(x + 2 * step, width)])
                    + NEAR * (in[row + mirror(x - step, width)] + in[row + mirror(x + step, width)])
                    + MIDDLE * in[row + x];
        }
    }

    private static int mirror(int i, int n) {
        if (i >= 0 && i < n) {
            return i;
        }
        if (n == 1) {
            return 0;
        }
        int j = Math.floorMod(i, 2 * (n - 1));
        return j < n ? j : 2 * (n - 1) - j;
    }
}
