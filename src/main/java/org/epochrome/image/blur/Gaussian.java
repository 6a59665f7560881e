package org.epochrome.image.blur;

import java.util.Arrays;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/** Gaussian blur by two one-dimensional passes, for planes without NaN. */
public final class Gaussian {
    /** Where the kernel is cut, in sigmas: less than 1e-4 of its weight lies outside. */
    private static final double REACH = 4.0;

    private Gaussian() {}

    /**
     * The plane convolved with a round Gaussian; everything outside the plane counts as zero.
     *
     * @param sigmaPx standard deviation, pixels; 0 or less copies
     */
    public static Plane blur(Plane plane, double sigmaPx) {
        return blur(plane, sigmaPx, RowRuns.reached(plane, reach(sigmaPx)));
    }

    /** The plane convolved with a round Gaussian within some runs only; everything outside them counts as zero and stays so. */
    public static Plane blur(Plane plane, double sigmaPx, RowRuns runs) {
        if (sigmaPx < 0.05) {
            return plane.copy();
        }
        return vertical(horizontal(plane, kernel(sigmaPx), runs), kernel(sigmaPx), runs);
    }

    private static int reach(double sigmaPx) {
        return Math.max(1, (int) Math.ceil(REACH * sigmaPx));
    }

    /**
     * Half a kernel, normalised: weight of the middle, of the first neighbour and so on. Each weight is the Gaussian
     * integrated over its pixel's neighbourhood in effect, since the sum is forced to one.
     */
    static float[] kernel(double sigmaPx) {
        int reach = reach(sigmaPx);
        double[] half = new double[reach + 1];
        double sum = 0;
        for (int i = 0; i <= reach; i++) {
            half[i] = Math.exp(-0.5 * (i / sigmaPx) * (i / sigmaPx));
            sum += i == 0 ? half[i] : 2 * half[i];
        }
        float[] kernel = new float[reach + 1];
        for (int i = 0; i <= reach; i++) {
            kernel[i] = (float) (half[i] / sum);
        }
        return kernel;
    }

    private static Plane horizontal(Plane plane, float[] kernel, RowRuns runs) {
        int width = plane.width();
        int reach = kernel.length - 1;
        float[] in = plane.data();
        Plane result = new Plane(width, plane.height());
        float[] out = result.data();
        Rows.each(plane.height(), (from, to) -> {
            float[] padded = new float[width + 2 * reach];
            float[] sum = new float[width];
            for (int y = from; y < to; y++) {
                for (int run = 0; run < runs.count(y); run++) {
                    int start = runs.from(y, run);
                    int n = runs.to(y, run) - start;
                    System.arraycopy(in, y * width + start, padded, reach, n);
                    Arrays.fill(padded, reach + n, 2 * reach + n, 0);
                    convolve(padded, kernel, sum, n);
                    System.arraycopy(sum, 0, out, y * width + start, n);
                }
            }
        });
        return result;
    }

    private static void convolve(float[] padded, float[] kernel, float[] sum, int n) {
        int reach = kernel.length - 1;
        for (int x = 0; x < n; x++) {
            sum[x] = kernel[0] * padded[x + reach];
        }
        int i = 1;
        for (; i < reach; i += 2) {
            float near = kernel[i];
            float far = kernel[i + 1];
            int left = reach - i;
            int right = reach + i;
            for (int x = 0; x < n; x++) {
                sum[x] = sum[x]
                        + near * (padded[x + left] + padded[x + right])
                        + far * (padded[x + left - 1] + padded[x + right + 1]);
            }
        }
        if (i == reach) {
            float weight = kernel[i];
            for (int x = 0; x < n; x++) {
                sum[x] += weight * (padded[x] + padded[x + 2 * reach]);
            }
        }
    }

    private static Plane vertical(Plane plane, float[] kernel, RowRuns runs) {
        int width = plane.width();
        int height = plane.height();
        int reach = kernel.length - 1;
        float[] in = plane.data();
        Plane result = new Plane(width, height);
        float[] out = result.data();
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                int first = Math.max(-reach, -y);
                int last = Math.min(reach, height - 1 - y);
                for (int run = 0; run < runs.count(y); run++) {
                    int at = y * width + runs.from(y, run);
                    int n = runs.to(y, run) - runs.from(y, run);
                    int i = first;
                    for (; i < last - 2; i += 4) {
                        addFour(out, at, in, width, n, kernel, i);
                    }
                    for (; i <= last; i++) {
                        RowRuns.add(out, at, in, at + i * width, n, kernel[Math.abs(i)]);
                    }
                }
            }
        });
        return result;
    }

    /** Adds four rows at once, one after the other to each sum, so that these are loaded and stored once. */
    private static void addFour(float[] out, int at, float[] in, int width, int n, float[] kernel, int i) {
        int row0 = at + i * width;
        int row1 = row0 + width;
        int row2 = row1 + width;
        int row3 = row2 + width;
        float weight0 = kernel[Math.abs(i)];
        float weight1 = kernel[Math.abs(i + 1)];
        float weight2 = kernel[Math.abs(i + 2)];
        float weight3 = kernel[Math.abs(i + 3)];
        for (int x = 0; x < n; x++) {
            out[at + x] = out[at + x]
                    + weight0 * in[row0 + x]
                    + weight1 * in[row1 + x]
                    + weight2 * in[row2 + x]
                    + weight3 * in[row3 + x];
        }
    }
}
