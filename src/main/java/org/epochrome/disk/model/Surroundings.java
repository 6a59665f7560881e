package org.epochrome.disk.model;

import java.util.Arrays;
import org.epochrome.disk.SkySlope;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Wings;

/**
 * Light in the samples of a disk that is not the picture of its core: a sky with a slope, and the {@linkplain Wings wings} of
 * the spread function. Both are linear in the unknowns of a fit, since wings spread what was seen.
 */
public final class Surroundings {
    /** How many Gaussians make the wings at most, */
    public static final int WINGS = 4;
    /** and their widths in units of the core's: where seeing rules, */
    private static final double[] SEEING = {2.5, 7, 20};
    /** and where diffraction does, whose rings lie close to the core. */
    private static final double[] DIFFRACTION = {1.3, 2, 4, 10};

    /** Wings narrower than so many cores are close to it. */
    private static final double CLOSE = 2.4;

    private static final double CLOSE_LOOSENESS = 0.2;
    /** Noise up to which they can be told from it; found on rendered scenes. */
    private static final double QUIET = 0.01;

    private final int width;
    private final double core;
    private final double[] widths;
    private final Plane[] spread;

    /**
     * @param data the samples; NaN where one is missing
     * @param core standard deviation of the core of the blur, sample pixels
     * @param sharp whether the frame is so sharp that diffraction shapes its blur
     */
    Surroundings(Plane data, double core, boolean sharp) {
        this(
                data,
                core,
                Arrays.stream(sharp ? DIFFRACTION : SEEING).map(w -> w * core).toArray());
    }

    private Surroundings(Plane data, double core, double[] widths) {
        width = data.width();
        this.core = core;
        this.widths = widths;
        spread = Wings.blurred(filled(data), widths);
    }

    /** The surroundings in other values of the samples. */
    Surroundings of(Plane other) {
        return new Surroundings(other, core, widths);
    }

    /**
     * A plane whose gaps take the nearest value in their row or column: a disk goes on beyond the edge that cuts it. Gaps without
     * such a value stay dark.
     */
    private static Plane filled(Plane plane) {
        int width = plane.width();
        int height = plane.height();
        int[] far = new int[width * height];
        Arrays.fill(far, width + height);
        Plane filled = plane.copy();
        for (int y = 0; y < height; y++) {
            fill(plane, filled, far, y * width, 1, width);
            fill(plane, filled, far, y * width + width - 1, -1, width);
        }
        for (int x = 0; x < width; x++) {
            fill(plane, filled, far, x, width, height);
            fill(plane, filled, far, (height - 1) * width + x, -width, height);
        }
        for (int i = 0; i < far.length; i++) {
            if (Float.isNaN(filled.data()[i])) {
                filled.data()[i] = 0;
            }
        }
        return filled;
    }

    /** Carries values along a row or column into gaps that have none nearer. */
    private static void fill(Plane plane, Plane filled, int[] far, int from, int step, int count) {
        int steps = plane.width() + plane.height();
        float last = Float.NaN;
        for (int n = 0, i = from; n < count; n++, i += step) {
            if (!Float.isNaN(plane.data()[i])) {
                last = plane.data()[i];
                steps = 0;
            } else if (++steps < far[i]) {
                far[i] = steps;
                filled.data()[i] = last;
            }
        }
    }

    /** Whether a wing is next to the core. */
    public boolean isClose(int wing) {
        return wing < widths.length && widths[wing] < CLOSE * core;
    }

    /**
     * How loose the expectation of small wings is: those next to the core hardly differ from it, and in noise not at all.
     *
     * @param noise standard deviation of a sample, in the disk's brightness
     */
    public double looseness(int wing, double noise) {
        boolean close = isClose(wing);
        return (close ? CLOSE_LOOSENESS : 1) * Math.min(1, (close ? QUIET : 2 * QUIET) / noise);
    }

    /** The light at a pixel of the samples, by the shape parameters of {@link DiskModel}. */
    public double at(double[] shape, int pixel) {
        double sum = sky(shape, pixel % width, row(pixel));
        for (int i = 0; i < widths.length; i++) {
            sum += shape[Unknowns.WINGS + i] * spread[i].data()[pixel];
        }
        return sum;
    }

    /** Puts the derivatives of {@link #at} by the shape into a list from a place on. */
    void putSlopes(int pixel, double[] slopes, int at) {
        slopes[at + Unknowns.SKY] = 1;
        slopes[at + Unknowns.SKY_RIGHT] = part(pixel % width);
        slopes[at + Unknowns.SKY_DOWN] = part(row(pixel));
        for (int i = 0; i < widths.length; i++) {
            slopes[at + Unknowns.WINGS + i] = spread[i].data()[pixel];
        }
        // Where there are fewer wings than unknowns the list still holds what another pixel put there.
        Arrays.fill(slopes, at + Unknowns.WINGS + widths.length, at + Unknowns.SHAPE, 0);
    }

    /** The sky that was seen at a place: its light is spread by the wings too, which add to it what they take. */
    public double skySeen(double[] shape, double x, double y) {
        return sky(shape, x, y) / unspread(shape);
    }

    /** What is left of the sky at a place if the wings' part of its light is taken off. */
    private double sky(double[] shape, double x, double y) {
        return shape[Unknowns.SKY] + shape[Unknowns.SKY_RIGHT] * part(x) + shape[Unknowns.SKY_DOWN] * part(y);
    }

    /** The slope per sample pixel of the sky that was seen. */
    public SkySlope skySlope(double[] shape) {
        return new SkySlope(shape[Unknowns.SKY_RIGHT], shape[Unknowns.SKY_DOWN]).times(2 / (width * unspread(shape)));
    }

    /** Part of the light that stays in the core. */
    private double unspread(double[] shape) {
        return 1 - Arrays.stream(parts(shape)).sum();
    }

    /** Shape parameters whose wings are no more than wings can be. */
    public double[] held(double[] shape) {
        double[] parts = Wings.held(widths, parts(shape));
        double[] held = shape.clone();
        System.arraycopy(parts, 0, held, Unknowns.WINGS, parts.length);
        return held;
    }

    /** The wings on the samples' pixels. */
    public Wings wings(double[] shape) {
        return Wings.of(widths, parts(shape));
    }

    private double[] parts(double[] shape) {
        return Arrays.copyOfRange(shape, Unknowns.WINGS, Unknowns.WINGS + widths.length);
    }

    private int row(int pixel) {
        return pixel / width;
    }

    private double part(double place) {
        return 2 * place / width - 1;
    }
}
