package org.epochrome.disk.model;

import org.epochrome.disk.BilinearShare;
import org.epochrome.disk.solve.Slope;
import org.epochrome.image.blur.Smear;

/**
 * Derivatives of a blurred picture of a planet by its shape parameters, from the slopes of the picture itself: a Gaussian
 * obeys the equation of heat; a larger planet is the same picture enlarged, less its larger blur and longer smear, a turned
 * one the same picture turned, but for its smear.
 */
public final class ShapeSlopes {
    private final double[] shape;
    private final Smear smear;
    private final float[] picture;
    private final float[][] moments;
    private final float[] darkening;
    private final float[] brightening;
    private final Samples samples;
    private final int width;

    /**
     * @param shape as {@link DiskModel} has it
     * @param picture blurred and smeared
     * @param moments the mean of the smear's copies, each times its offset, and times its derivatives by width and tilt
     * @param darkening derivative by the exponent of the shading
     * @param brightening derivative by the brightening of the limb
     * @param samples that the pictures are compared with
     */
    public ShapeSlopes(
            double[] shape,
            Smear smear,
            float[] picture,
            float[][] moments,
            float[] darkening,
            float[] brightening,
            Samples samples) {
        this.shape = shape;
        this.smear = smear;
        this.picture = picture;
        this.moments = moments;
        this.darkening = darkening;
        this.brightening = brightening;
        this.samples = samples;
        width = samples.data().width();
    }

    /** Puts the derivatives at a pixel into a list from a place on. */
    public void put(int x, int y, double[] slopes, int at) {
        int p = y * width + x;
        double right = Slope.first(picture, p, 1);
        double down = Slope.first(picture, p, width);
        double laplacian = Slope.second(picture, p, 1) + Slope.second(picture, p, width);
        double dx = x - shape[Unknowns.X];
        double dy = y - shape[Unknowns.Y];
        double blur = shape[Unknowns.BLUR];
        double longer = along(moments[0], p);
        slopes[at + Unknowns.X] = -right;
        slopes[at + Unknowns.Y] = -down;
        slopes[at + Unknowns.RADIUS] =
                -(dx * right + dy * down + (blur * blur + BilinearShare.VARIANCE) * laplacian - longer)
                        / shape[Unknowns.RADIUS];
        slopes[at + Unknowns.NORTH] = dx * down - dy * right - across(moments[0], p);
        slopes[at + Unknowns.POLES] = poles(dx, dy, right, down, (blur * blur + BilinearShare.VARIANCE) * laplacian);
        slopes[at + Unknowns.MINNAERT] = darkening[p];
        slopes[at + Unknowns.BLUR] = blur * laplacian;
        slopes[at + Unknowns.BRIGHTENING] = brightening[p];
        slopes[at + Unknowns.SMEAR_WIDTH] = -along(moments[1], p);
        slopes[at + Unknowns.SMEAR_TILT] = -along(moments[2], p);
        samples.surroundings().putSlopes(p, slopes, at);
    }

    /** Derivative by the axis ratio: the picture stretched along the pole, less its larger blur, which counts across the limb. */
    private double poles(double dx, double dy, double right, double down, double blurred) {
        double poleRight = -Math.sin(shape[Unknowns.NORTH]);
        double poleDown = -Math.cos(shape[Unknowns.NORTH]);
        double off = dx * poleRight + dy * poleDown;
        double part = off * off / Math.max(1, dx * dx + dy * dy);
        return -off * (poleRight * right + poleDown * down) - part * blurred;
    }

    /** Slope of a picture along the smear. */
    private double along(float[] moment, int p) {
        return smear == Smear.NONE
                ? 0
                : smear.right() * Slope.first(moment, p, 1) + smear.down() * Slope.first(moment, p, width);
    }

    /** Slope of a picture across the smear. */
    private double across(float[] moment, int p) {
        return smear == Smear.NONE
                ? 0
                : smear.right() * Slope.first(moment, p, width) - smear.down() * Slope.first(moment, p, 1);
    }
}
