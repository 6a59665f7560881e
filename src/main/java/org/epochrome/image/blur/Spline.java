package org.epochrome.image.blur;

import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * A plane as a continuous function: the cubic B-spline through its pixels.
 *
 * <p>Of the kernels with a support of four pixels it keeps fine detail best: its response stays above 0.95 up to 60 % of
 * the Nyquist frequency. Prefilter: Unser, Aldroubi & Eden 1993, IEEE Trans. Signal Process. 41, 834, section III.
 * Beyond its edges the plane is mirrored about the outermost pixels' centres. The plane must not contain NaN.
 */
public final class Spline {
    private static final double POLE = Math.sqrt(3.0) - 2.0;

    private final int width;
    private final int height;
    private final float[] coefficients;

    public Spline(Plane plane) {
        width = plane.width();
        height = plane.height();
        coefficients = plane.data().clone();
        Rows.each(height, (from, to) -> {
            double[] line = new double[width];
            for (int y = from; y < to; y++) {
                filterRow(y * width, line);
            }
        });
        // Columns in blocks, so that neighbours in memory are used together.
        int block = 16;
        Rows.each((width + block - 1) / block, (from, to) -> {
            double[] line = new double[height];
            for (int x = from * block; x < Math.min(width, to * block); x++) {
                filterColumn(x, line);
            }
        });
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    private void filterRow(int start, double[] line) {
        for (int i = 0; i < width; i++) {
            line[i] = coefficients[start + i];
        }
        prefilter(line);
        for (int i = 0; i < width; i++) {
            coefficients[start + i] = (float) line[i];
        }
    }

    private void filterColumn(int x, double[] line) {
        for (int i = 0; i < height; i++) {
            line[i] = coefficients[i * width + x];
        }
        prefilter(line);
        for (int i = 0; i < height; i++) {
            coefficients[i * width + x] = (float) line[i];
        }
    }

    private static void prefilter(double[] c) {
        int n = c.length;
        if (n < 2) {
            return;
        }
        // Causal start: the mirrored sum, cut where the pole's powers vanish.
        int reach = Math.min(n, 28);
        double power = POLE;
        double first = c[0];
        for (int i = 1; i < reach; i++) {
            first += power * c[i];
            power *= POLE;
        }
        c[0] = first;
        for (int i = 1; i < n; i++) {
            c[i] += POLE * c[i - 1];
        }
        c[n - 1] = POLE / (POLE * POLE - 1) * (c[n - 1] + POLE * c[n - 2]);
        for (int i = n - 2; i >= 0; i--) {
            c[i] = POLE * (c[i + 1] - c[i]);
        }
        for (int i = 0; i < n; i++) {
            c[i] *= 6;
        }
    }

    /** Whether a place lies on the plane, at most half a pixel beyond the outermost centres. */
    public boolean contains(double x, double y) {
        return x >= -0.5 && y >= -0.5 && x <= width - 0.5 && y <= height - 0.5;
    }

    /**
     * The value at a place.
     *
     * @param x pixels to the right of the centre of the leftmost column
     * @param y pixels below the centre of the top row
     */
    public float at(double x, double y) {
        int ix = (int) Math.floor(x);
        int iy = (int) Math.floor(y);
        float fx = (float) (x - ix);
        float fy = (float) (y - iy);
        float gx = 1 - fx;
        float gy = 1 - fy;
        float wx0 = gx * gx * gx / 6;
        float wx1 = (4 - 3 * fx * fx * (2 - fx)) / 6;
        float wx3 = fx * fx * fx / 6;
        float wx2 = 1 - wx0 - wx1 - wx3;
        float wy0 = gy * gy * gy / 6;
        float wy1 = (4 - 3 * fy * fy * (2 - fy)) / 6;
        float wy3 = fy * fy * fy / 6;
        float wy2 = 1 - wy0 - wy1 - wy3;
        if (ix >= 1 && iy >= 1 && ix < width - 2 && iy < height - 2) {
            int p = (iy - 1) * width + ix - 1;
            return wy0 * line(p, wx0, wx1, wx2, wx3)
                    + wy1 * line(p + width, wx0, wx1, wx2, wx3)
                    + wy2 * line(p + 2 * width, wx0, wx1, wx2, wx3)
                    + wy3 * line(p + 3 * width, wx0, wx1, wx2, wx3);
        }
        int x0 = mirror(ix - 1, width);
        int x1 = mirror(ix, width);
        int x2 = mirror(ix + 1, width);
        int x3 = mirror(ix + 2, width);
        float sum = 0;
        float[] wy = {wy0, wy1, wy2, wy3};
        for (int j = 0; j < 4; j++) {
            int row = mirror(iy - 1 + j, height) * width;
            sum += wy[j]
                    * (wx0 * coefficients[row + x0]
                            + wx1 * coefficients[row + x1]
                            + wx2 * coefficients[row + x2]
                            + wx3 * coefficients[row + x3]);
        }
        return sum;
    }

    private float line(int p, float w0, float w1, float w2, float w3) {
        float[] c = coefficients;
        return w0 * c[p] + w1 * c[p + 1] + w2 * c[p + 2] + w3 * c[p + 3];
    }

    /** The spline at all pixels moved alike. */
    public Shifted shifted(double right, double down) {
        return new Shifted(right, down);
    }

    /** Values at one offset from each pixel: the weights of its neighbours are the same everywhere. */
    public final class Shifted {
        private final double right;
        private final double down;
        private final int columns;
        private final int rows;
        private final float[] across;
        private final float[] along;

        private Shifted(double right, double down) {
            this.right = right;
            this.down = down;
            columns = (int) Math.floor(right);
            rows = (int) Math.floor(down);
            across = weights((float) (right - columns));
            along = weights((float) (down - rows));
        }

        /** The value at the offset from a pixel. */
        public float at(int x, int y) {
            int ix = x + columns;
            int iy = y + rows;
            if (ix < 1 || iy < 1 || ix >= width - 2 || iy >= height - 2) {
                return Spline.this.at(x + right, y + down);
            }
            float sum = 0;
            int p = (iy - 1) * width + ix - 1;
            for (int j = 0; j < 4; j++) {
                sum += along[j] * line(p + j * width, across[0], across[1], across[2], across[3]);
            }
            return sum;
        }
    }

    /** Weights of the four coefficients around a place by its part of the way from the second to the third. */
    private static float[] weights(float part) {
        float rest = 1 - part;
        float first = rest * rest * rest / 6;
        float second = (4 - 3 * part * part * (2 - part)) / 6;
        float last = part * part * part / 6;
        return new float[] {first, second, 1 - first - second - last, last};
    }

    private static int mirror(int i, int n) {
        if (n == 1) {
            return 0;
        }
        int period = 2 * (n - 1);
        int j = Math.floorMod(i, period);
        return j < n ? j : period - j;
    }
}
