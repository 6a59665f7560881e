package org.epochrome.image.blur;

import org.epochrome.image.Plane;
import org.epochrome.job.Rows;
import org.jtransforms.fft.FloatFFT_1D;

/**
 * Convolution of a plane with a round kernel whose transfer function is made of Gaussians, by fast Fourier transforms. Everything
 * outside the plane counts as zero. The plane must not hold NaN.
 */
final class RadialFilter {
    private final int width;
    private final int height;
    private final int columns;
    private final int lines;
    /** Half of the spectrum: for each column pair, the complex values of all lines, one column after the other. */
    private final float[] spectrum;

    private final float[] edge;

    /**
     * Transforms a plane.
     *
     * @param reachPx how far the kernels reach, pixels: that much of the surroundings is kept free
     */
    RadialFilter(Plane plane, double reachPx) {
        width = plane.width();
        height = plane.height();
        int reach = (int) Math.ceil(Math.max(1, reachPx));
        columns = fastSize(width + reach);
        lines = fastSize(height + reach);
        int half = columns / 2;
        spectrum = new float[half * 2 * lines];
        edge = new float[2 * lines];
        FloatFFT_1D along = new FloatFFT_1D(columns);
        Rows.each(height, (from, to) -> {
            float[] row = new float[columns];
            for (int y = from; y < to; y++) {
                java.util.Arrays.fill(row, 0);
                System.arraycopy(plane.data(), y * width, row, 0, width);
                along.realForward(row);
                for (int k = 0; k < half; k++) {
                    spectrum[k * 2 * lines + 2 * y] = row[2 * k];
                    spectrum[k * 2 * lines + 2 * y + 1] = k == 0 ? 0 : row[2 * k + 1];
                }
                edge[2 * y] = row[1];
            }
        });
        FloatFFT_1D across = new FloatFFT_1D(lines);
        Rows.each(half, (from, to) -> {
            for (int k = from; k < to; k++) {
                across.complexForward(spectrum, k * 2 * lines);
            }
        });
        across.complexForward(edge);
    }

    /** A transfer function by those of some Gaussians at the same spatial frequency, 0 to 1. */
    @FunctionalInterface
    interface Transfer {
        double of(double[] gaussians);
    }

    /**
     * The plane convolved with a kernel.
     *
     * @param sigmasPx standard deviations of the Gaussians, pixels
     * @param transfer the kernel's transfer function
     */
    Plane with(double[] sigmasPx, Transfer transfer) {
        int half = columns / 2;
        double[][] right = transfers(sigmasPx, columns);
        double[][] down = transfers(sigmasPx, lines);
        float[] filtered = new float[spectrum.length];
        FloatFFT_1D across = new FloatFFT_1D(lines);
        Rows.each(half, (from, to) -> {
            double[] gaussians = new double[sigmasPx.length];
            for (int k = from; k < to; k++) {
                filter(spectrum, filtered, k * 2 * lines, right[k], down, gaussians, transfer);
                across.complexInverse(filtered, k * 2 * lines, true);
            }
        });
        float[] filteredEdge = new float[edge.length];
        filter(edge, filteredEdge, 0, right[half], down, new double[sigmasPx.length], transfer);
        across.complexInverse(filteredEdge, true);
        Plane result = new Plane(width, height);
        FloatFFT_1D along = new FloatFFT_1D(columns);
        Rows.each(height, (from, to) -> {
            float[] row = new float[columns];
            for (int y = from; y < to; y++) {
                for (int k = 0; k < half; k++) {
                    row[2 * k] = filtered[k * 2 * lines + 2 * y];
                    row[2 * k + 1] = filtered[k * 2 * lines + 2 * y + 1];
                }
                row[1] = filteredEdge[2 * y];
                along.realInverse(row, true);
                System.arraycopy(row, 0, result.data(), y * width, width);
            }
        });
        return result;
    }

    /** Transfer functions of Gaussians at each frequency of a row or column up to the highest: a round one is a product of two. */
    private static double[][] transfers(double[] sigmasPx, int size) {
        double[][] transfers = new double[size / 2 + 1][sigmasPx.length];
        for (int k = 0; k < transfers.length; k++) {
            for (int i = 0; i < sigmasPx.length; i++) {
                double phase = Math.PI * sigmasPx[i] * k / size;
                transfers[k][i] = Math.exp(-2 * phase * phase);
            }
        }
        return transfers;
    }

    private void filter(
            float[] in, float[] out, int at, double[] right, double[][] down, double[] gaussians, Transfer transfer) {
        for (int l = 0; 2 * l <= lines; l++) {
            for (int i = 0; i < gaussians.length; i++) {
                gaussians[i] = right[i] * down[l][i];
            }
            float factor = (float) transfer.of(gaussians);
            scale(in, out, at + 2 * l, factor);
            if (l > 0 && 2 * l < lines) { // the negative frequency has the same transfer
                scale(in, out, at + 2 * (lines - l), factor);
            }
        }
    }

    private static void scale(float[] in, float[] out, int at, float factor) {
        out[at] = in[at] * factor;
        out[at + 1] = in[at + 1] * factor;
    }

    /** The least even product of small primes that is not below a number. */
    private static int fastSize(int least) {
        for (int n = least + (least & 1); ; n += 2) {
            int rest = n;
            for (int prime : new int[] {2, 3, 5}) {
                while (rest % prime == 0) {
                    rest /= prime;
                }
            }
            if (rest == 1) {
                return n;
            }
        }
    }
}
