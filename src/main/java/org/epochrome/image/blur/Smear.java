package org.epochrome.image.blur;

import java.util.Arrays;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * A picture smeared along a line, as dispersion does to a band: the mean of copies moved by known offsets whose mean is
 * zero. Offsets count along a direction in the image.
 */
public final class Smear {
    /** No smear. */
    public static final Smear NONE = new Smear(0, new double[0]);

    private final double directionDeg;
    private final double[] offsetsPx;

    private Smear(double directionDeg, double[] offsetsPx) {
        this.directionDeg = directionDeg;
        this.offsetsPx = offsetsPx;
    }

    /**
     * A smear along a line; the offsets' mean is taken out.
     *
     * @param directionDeg from image up, counter-clockwise positive as displayed
     * @param offsetsPx of equally strong copies along that direction, pixels
     */
    public static Smear along(double directionDeg, double... offsetsPx) {
        double mean = Arrays.stream(offsetsPx).average().orElse(0);
        double[] centred = Arrays.stream(offsetsPx).map(o -> o - mean).toArray();
        double reach = Arrays.stream(centred).map(Math::abs).max().orElse(0);
        return reach < 0.05 ? NONE : new Smear(directionDeg, centred);
    }

    /** The smear on an image turned counter-clockwise by an angle, enlarged by a factor, mirrored first or not. */
    public Smear on(double turnedByDeg, double scale, boolean mirrored) {
        double direction = (mirrored ? -directionDeg : directionDeg) + turnedByDeg;
        return this == NONE
                ? NONE
                : new Smear(
                        direction, Arrays.stream(offsetsPx).map(o -> o * scale).toArray());
    }

    /** The smear in the opposite sense: the adjoint of this one. */
    public Smear reversed() {
        return this == NONE
                ? NONE
                : new Smear(directionDeg, Arrays.stream(offsetsPx).map(o -> -o).toArray());
    }

    /** Offsets of the copies along the direction, pixels; a single 0 if there is no smear. */
    public double[] offsetsPx() {
        return this == NONE ? new double[] {0} : offsetsPx.clone();
    }

    /** Direction from image up, counter-clockwise positive as displayed. */
    public double directionDeg() {
        return directionDeg;
    }

    /** From the first to the last copy, pixels. */
    public double lengthPx() {
        return Arrays.stream(offsetsPx).max().orElse(0)
                - Arrays.stream(offsetsPx).min().orElse(0);
    }

    /** How far a copy lies off at most, pixels. */
    public double farthestPx() {
        return Arrays.stream(offsetsPx).map(Math::abs).max().orElse(0);
    }

    /** Part of the direction's unit vector along the columns' numbers. */
    public double right() {
        return -Math.sin(Math.toRadians(directionDeg));
    }

    /** Part of the direction's unit vector along the rows' numbers. */
    public double down() {
        return -Math.cos(Math.toRadians(directionDeg));
    }

    /** The smear of the same length whose copies lie as far to the one side as to the other. */
    public Smear balanced() {
        double[] balanced = offsetsPx.clone();
        Arrays.sort(balanced);
        for (int i = 0, j = balanced.length - 1; i <= j; i++, j--) {
            double half = 0.5 * (balanced[j] - balanced[i]);
            balanced[i] = -half;
            balanced[j] = half;
        }
        return this == NONE ? NONE : new Smear(directionDeg, balanced);
    }

    /**
     * How far along the direction detail seems to lie off where its centre of light lies: dispersion grows faster towards
     * short waves, so the smear is lopsided, and detail follows its denser side, by the square of its fineness (from the
     * third moment of the offsets).
     *
     * @param blurPx size of the detail, standard deviation
     */
    public double leanPx(double blurPx) {
        double third = Arrays.stream(offsetsPx).map(o -> o * o * o).average().orElse(0);
        return -third / (6 * blurPx * blurPx);
    }

    /** The plane smeared; everything outside the plane counts as zero. */
    public Plane of(Plane plane) {
        return of(plane, RowRuns.reached(plane, reach()));
    }

    /** How far light gets, pixels. */
    private int reach() {
        return 2 + (int) Math.ceil(farthestPx());
    }

    /** The smeared plane within some runs only; the rest becomes zero. */
    public Plane of(Plane plane, RowRuns runs) {
        if (this == NONE) {
            return plane;
        }
        double[] even = new double[offsetsPx.length];
        Arrays.fill(even, 1);
        return weighted(plane, runs, even);
    }

    /** The mean of the copies, each times its offset: what a longer smear would change. */
    public Plane moment(Plane plane) {
        return moment(plane, RowRuns.reached(plane, reach()));
    }

    /** The mean of the copies, each times its offset, within some runs only. */
    public Plane moment(Plane plane, RowRuns runs) {
        return moment(plane, runs, offsetsPx);
    }

    /**
     * The mean of the copies, each times a weight of its own, within some runs: what changes where each copy moves by its
     * weight.
     *
     * @param weights as many as there are copies
     */
    public Plane moment(Plane plane, RowRuns runs, double[] weights) {
        return this == NONE ? new Plane(plane.width(), plane.height()) : weighted(plane, runs, weights);
    }

    private Plane weighted(Plane plane, RowRuns runs, double[] weights) {
        int reach = reach();
        int side = 2 * reach + 1;
        float[] kernel = kernel(reach, side, weights);
        int width = plane.width();
        int height = plane.height();
        float[] in = plane.data();
        Plane result = new Plane(width, height);
        float[] out = result.data();
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int k = 0; k < kernel.length; k++) {
                    int source = y - (k / side - reach);
                    if (kernel[k] == 0 || source < 0 || source >= height) {
                        continue;
                    }
                    int dx = k % side - reach;
                    int first = Math.max(0, dx);
                    int last = Math.min(width, width + dx);
                    float weight = kernel[k];
                    int shift = source * width - dx;
                    for (int run = 0; run < runs.count(y); run++) {
                        int end = Math.min(last, runs.to(y, run));
                        int start = Math.max(first, runs.from(y, run));
                        RowRuns.add(out, y * width + start, in, shift + start, end - start, weight);
                    }
                }
            }
        });
        return result;
    }

    /**
     * The copies as a kernel. Places between pixels are shared by cubic convolution (Keys 1981, IEEE Trans. ASSP 29,
     * 1153), which keeps the variance of the offsets, so that the smear blurs no more than it should.
     */
    private float[] kernel(int reach, int side, double[] weights) {
        float[] kernel = new float[side * side];
        for (int k = 0; k < offsetsPx.length; k++) {
            double offset = offsetsPx[k];
            double weight = weights[k] / offsetsPx.length;
            double x = reach + offset * right();
            double y = reach + offset * down();
            int left = (int) Math.floor(x) - 1;
            int top = (int) Math.floor(y) - 1;
            for (int j = top; j < top + 4; j++) {
                for (int i = left; i < left + 4; i++) {
                    kernel[j * side + i] += (float) (cubic(x - i) * cubic(y - j) * weight);
                }
            }
        }
        return kernel;
    }

    private static double cubic(double distance) {
        double d = Math.abs(distance);
        return d < 1 ? 1 - d * d * (2.5 - 1.5 * d) : d < 2 ? 2 - d * (4 - d * (2.5 - 0.5 * d)) : 0;
    }
}
