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
        // The blurred disk is the sum of the chords across it, each blurred along itself in closed form.
        double[] chordX = new double[ANGLES];
        double[] chordLight = new double[ANGLES];
        double[] chordHalf = new double[ANGLES];
        for (int i = 0; i < ANGLES; i++) {
            double angle = Math.PI * ((i + 0.5) / ANGLES - 0.5);
            chordX[i] = radiusPx * Math.sin(angle);
            chordHalf[i] = radiusPx * Math.cos(angle);
            chordLight[i] = Erf.erf(chordHalf[i] / (Math.sqrt(2) * sigma));
        }
        profile = new double[(int) Math.ceil(reachPx / STEP_PX) + 2];
        for (int k = 0; k < profile.length; k++) {
            double sum = 0;
            for (int i = 0; i < ANGLES; i++) {
                double t = (chordX[i] - k * STEP_PX) / sigma;
                sum += chordHalf[i] * Math.exp(-0.5 * t * t) * chordLight[i];
            }
            profile[k] = sum * Math.PI / ANGLES / (Math.sqrt(2 * Math.PI) * sigma);
        }
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
