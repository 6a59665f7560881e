package org.epochrome.image;

import java.util.Arrays;
import org.epochrome.job.Rows;

/**
 * A picture drawn out along a line, as dispersion does to a band: the mean of copies moved by known offsets whose mean is
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

    /** Direction from image up, counter-clockwise positive as displayed. */
    public double directionDeg() {
        return directionDeg;
    }

    /** From the first to the last copy, pixels. */
    public double lengthPx() {
        return Arrays.stream(offsetsPx).max().orElse(0)
                - Arrays.stream(offsetsPx).min().orElse(0);
    }

    /** The plane smeared; everything outside the plane counts as zero. Places between pixels are shared bilinearly. */
    public Plane of(Plane plane) {
        if (this == NONE) {
            return plane;
        }
        int reach = 1
                + (int) Math.ceil(Arrays.stream(offsetsPx).map(Math::abs).max().orElse(0));
        int side = 2 * reach + 1;
        float[] kernel = kernel(reach, side);
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
                    for (int x = first; x < last; x++) {
                        out[y * width + x] += weight * in[shift + x];
                    }
                }
            }
        });
        return result;
    }

    private float[] kernel(int reach, int side) {
        float[] kernel = new float[side * side];
        double right = -Math.sin(Math.toRadians(directionDeg));
        double down = -Math.cos(Math.toRadians(directionDeg));
        for (double offset : offsetsPx) {
            double x = reach + offset * right;
            double y = reach + offset * down;
            int ix = (int) Math.floor(x);
            int iy = (int) Math.floor(y);
            double fx = x - ix;
            double fy = y - iy;
            kernel[iy * side + ix] += (float) ((1 - fx) * (1 - fy) / offsetsPx.length);
            kernel[iy * side + ix + 1] += (float) (fx * (1 - fy) / offsetsPx.length);
            kernel[(iy + 1) * side + ix] += (float) ((1 - fx) * fy / offsetsPx.length);
            kernel[(iy + 1) * side + ix + 1] += (float) (fx * fy / offsetsPx.length);
        }
        return kernel;
    }
}
