package org.epochrome.disk.model;

import org.epochrome.disk.solve.Skyline;

/**
 * What is expected of a band's light before the frame is looked at: that its passband is about as wide as assumed, and its
 * spectrum about as steep.
 */
public final class SmearPrior {
    /** Part of the width by which filters differ from their kind, and the refraction of the air from the model (no source). */
    private static final double WIDTH_SCATTER = 0.08;

    /** Filters and cameras that are better at one end of the band; an even spectrum has 0.6 against the usual light in blue (no source). */
    private static final double TILT_SCATTER = 0.4;

    /** So many pixels around a limb share what the model misses; found on rendered scenes, see {@link LimbLawEstimate}. */
    private static final double SHARED = 25;

    private SmearPrior() {}

    /** Adds the expectation to normal equations whose shape parameters begin at an index. */
    public static void addTo(Skyline normals, int first, double[] shape) {
        add(normals, first + Unknowns.SMEAR_WIDTH, shape[Unknowns.SMEAR_WIDTH], WIDTH_SCATTER);
        add(normals, first + Unknowns.SMEAR_TILT, shape[Unknowns.SMEAR_TILT], TILT_SCATTER);
    }

    /**
     * Variances of the shape parameters from their covariance. What they owe to an unknown smear counts as often as pixels share an
     * error: long smears make it so large a part of the centre's that it must be true.
     */
    public static double[] widened(double[][] covariance) {
        int w = Unknowns.SMEAR_WIDTH;
        int t = Unknowns.SMEAR_TILT;
        double ww = covariance[w][w];
        double wt = covariance[w][t];
        double tt = covariance[t][t];
        double determinant = ww * tt - wt * wt;
        double[] variances = new double[covariance.length];
        for (int i = 0; i < variances.length; i++) {
            double a = covariance[i][w];
            double b = covariance[i][t];
            double bySmear = (tt * a * a - 2 * wt * a * b + ww * b * b) / determinant;
            variances[i] = covariance[i][i] + (SHARED - 1) * bySmear;
        }
        return variances;
    }

    private static void add(Skyline normals, int index, double value, double scatter) {
        double trust = SHARED / (scatter * scatter);
        normals.add(index, index, trust);
        normals.addRight(index, -trust * value);
    }

    /** Twice the negative logarithm of the prior. */
    static double misfit(double[] shape) {
        double width = shape[Unknowns.SMEAR_WIDTH] / WIDTH_SCATTER;
        double tilt = shape[Unknowns.SMEAR_TILT] / TILT_SCATTER;
        return SHARED * (width * width + tilt * tilt);
    }
}
