package org.epochrome.align;

import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.job.Rows;

/**
 * One picture as a mixture of one or two others with gains of its own in every neighbourhood: the least-squares gains and
 * what they leave unexplained, as running weighted means with a Gaussian window. The means vary slowly and are kept on a
 * coarser grid.
 */
final class LocalRelation {
    /** Cells in a neighbourhood's standard deviation. */
    private static final double CELLS = 3;
    /** Gains are held back a little where a regressor hardly varies: part of its mean square over the disk. */
    private static final double RIDGE = 1e-3;

    private final int width;
    private final int cell;
    private final int cells;
    private final int lastRow;
    private final float[] gainA;
    private final float[] gainB;
    private final float[] left;
    private final float[] total;

    /**
     * The relation {@code y = gainA * a + gainB * b}.
     *
     * @param b the second regressor; null for none
     * @param weight 0 where nothing is known
     * @param neighbourhoodPx standard deviation of the window
     */
    LocalRelation(Plane a, Plane b, Plane y, Plane weight, double neighbourhoodPx) {
        width = y.width();
        cell = Math.max(1, (int) (neighbourhoodPx / CELLS));
        double reach = neighbourhoodPx / cell;
        cells = width / cell;
        lastRow = y.height() / cell - 1;
        float[] aa = mean(weight, a, a, reach);
        float[] ay = mean(weight, a, y, reach);
        float[] yy = mean(weight, y, y, reach);
        float[] ww = mean(weight, null, null, reach);
        float[] bb = b == null ? null : mean(weight, b, b, reach);
        float[] ab = b == null ? null : mean(weight, a, b, reach);
        float[] by = b == null ? null : mean(weight, b, y, reach);
        gainA = new float[aa.length];
        gainB = new float[aa.length];
        left = new float[aa.length];
        total = new float[aa.length];
        double ridgeA = RIDGE * sum(aa) / Math.max(1e-9, sum(ww));
        double ridgeB = b == null ? 1 : RIDGE * sum(bb) / Math.max(1e-9, sum(ww));
        for (int i = 0; i < aa.length; i++) {
            if (ww[i] < 1e-4f) {
                continue;
            }
            double saa = aa[i] + ridgeA * ww[i];
            double sbb = b == null ? 1 : bb[i] + ridgeB * ww[i];
            double sab = b == null ? 0 : ab[i];
            double sby = b == null ? 0 : by[i];
            double determinant = saa * sbb - sab * sab;
            double ga = determinant > 0 ? (ay[i] * sbb - sby * sab) / determinant : 0;
            double gb = determinant > 0 && b != null ? (sby * saa - ay[i] * sab) / determinant : 0;
            gainA[i] = (float) ga;
            gainB[i] = (float) gb;
            left[i] = (float) (Math.max(0, yy[i] - ga * ay[i] - gb * sby) / ww[i]);
            total[i] = yy[i] / ww[i];
        }
    }

    /** The local mean of a weighted product of two planes, or of the weight alone, on the coarser grid. */
    private float[] mean(Plane weight, Plane p, Plane q, double reach) {
        Plane means = new Plane(cells, lastRow + 1);
        float[] w = weight.data();
        float scale = 1f / (cell * cell);
        Rows.each(means.height(), (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < cells; x++) {
                    float sum = 0;
                    for (int j = 0; j < cell; j++) {
                        int first = (y * cell + j) * width + x * cell;
                        for (int i = first; i < first + cell; i++) {
                            sum += p == null ? w[i] : w[i] * p.data()[i] * q.data()[i];
                        }
                    }
                    means.set(x, y, scale * sum);
                }
            }
        });
        return Gaussian.blur(means, reach).data();
    }

    private static double sum(float[] values) {
        double sum = 0;
        for (float v : values) {
            sum += v;
        }
        return sum;
    }

    /** The cell of a pixel. */
    int cell(int x, int y) {
        return Math.min(y / cell, lastRow) * cells + Math.min(x / cell, cells - 1);
    }

    double gainA(int at) {
        return gainA[at];
    }

    double gainB(int at) {
        return gainB[at];
    }

    /** Mean square of what the mixture leaves of y. */
    double unexplained(int at) {
        return left[at];
    }

    /** Mean square of y. */
    double total(int at) {
        return total[at];
    }
}
