package org.epochrome.image;

import org.apache.commons.math3.special.Erf;

/**
 * A round disk of even brightness 1, blurred by a Gaussian and drawn out into equally strong copies: what a moon looks like.
 * Pixels integrate over their area.
 */
public final class RoundSpot {
    private static final int ANGLES = 96;
    private static final double STEP_PX = 0.05;
    private static final double REACH_SIGMAS = 5;
    /** Variance that the area of a pixel adds to a blur. */
    private static final double PIXEL_VARIANCE = 1 / 12.0;

    private final double[] profile;
    private final double reachPx;
    private final double[] copiesX;
    private final double[] copiesY;

    /**
     * A spot.
     *
     * @param radiusPx of the disk
     * @param blurPx standard deviation of the blur
     * @param copiesX offsets of its copies to the right, pixels; {0} for none
     * @param copiesY the same downward
     */
    public RoundSpot(double radiusPx, double blurPx, double[] copiesX, double[] copiesY) {
        this.copiesX = copiesX.clone();
        this.copiesY = copiesY.clone();
        double sigma = Math.sqrt(blurPx * blurPx + PIXEL_VARIANCE);
        reachPx = radiusPx + REACH_SIGMAS * sigma;
        profile = new double[(int) Math.ceil(reachPx / STEP_PX) + 2];
        for (int i = 0; i < profile.length; i++) {
            profile[i] = at(i * STEP_PX, radiusPx, sigma);
        }
    }

    /** The blurred disk at a distance from its centre: chords across it, each blurred along itself in closed form. */
    private static double at(double distance, double radius, double sigma) {
        double sum = 0;
        for (int i = 0; i < ANGLES; i++) {
            double angle = Math.PI * ((i + 0.5) / ANGLES - 0.5);
            double x = radius * Math.sin(angle);
            double half = radius * Math.cos(angle);
            double t = (x - distance) / sigma;
            sum += half * Math.exp(-0.5 * t * t) * Erf.erf(half / (Math.sqrt(2) * sigma));
        }
        return sum * Math.PI / ANGLES / (Math.sqrt(2 * Math.PI) * sigma);
    }

    /** How far its light reaches from the middle, copies included, pixels. */
    public double reachPx() {
        double most = 0;
        for (int i = 0; i < copiesX.length; i++) {
            most = Math.max(most, Math.hypot(copiesX[i], copiesY[i]));
        }
        return reachPx + most;
    }

    /** Brightness at an offset from the middle, 0 to 1. */
    public double at(double dx, double dy) {
        double sum = 0;
        for (int i = 0; i < copiesX.length; i++) {
            double x = dx - copiesX[i];
            double y = dy - copiesY[i];
            double place = Math.sqrt(x * x + y * y) / STEP_PX;
            int k = (int) place;
            if (k < profile.length - 1) {
                sum += profile[k] + (place - k) * (profile[k + 1] - profile[k]);
            }
        }
        return sum / copiesX.length;
    }
}
