package org.epochrome.image.blur;

import java.util.function.DoubleUnaryOperator;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;
import org.jtransforms.fft.FloatFFT_1D;

/**
 * Convolution of a plane with a round kernel that is given by its transfer function, by fast Fourier transforms. Everything
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

    /**
     * The plane convolved with a kernel.
     *
     * @param transfer the kernel's transfer function of the square of the spatial frequency, square cycles per pixel
     */
    Plane with(DoubleUnaryOperator transfer) {
        int half = columns / 2;
        float[] filtered = new float[spectrum.length];
        FloatFFT_1D across = new FloatFFT_1D(lines);
        Rows.each(half, (from, to) -> {
            for (int k = from; k < to; k++) {
                filter(spectrum, filtered, k, k * 2 * lines, transfer);
                across.complexInverse(filtered, k * 2 * lines, true);
            }
        });
        float[] filteredEdge = new float[edge.length];
        filter(edge, filteredEdge, half, 0, transfer);
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

    private void filter(float[] in, float[] out, int k, int at, DoubleUnaryOperator transfer) {
        double u = k / (double) columns;
        for (int l = 0; 2 * l <= lines; l++) {
            double v = l / (double) lines;
            float factor = (float) transfer.applyAsDouble(u * u + v * v);
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
