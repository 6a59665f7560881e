package org.epochrome.session.combine;

import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;

/**
 * By how much blurred frames are off where the picture is finely detailed: the sharpest frame of a band, blurred as the
 * most blurred one is, shows it. Others are off in proportion to the difference of their squared blurs, as the equation of
 * heat has it to first order.
 */
final class Sharpness {
    /** Blurs that differ by less are alike, within the errors of their fits. */
    private static final double ALIKE = 1.05;
    /** Width of the neighbourhood over which the errors are averaged, in blurs of the sharpest. */
    private static final double NEIGHBOURHOOD = 2;

    private final double sharpestPx;
    private final double mostPx;
    private final float[] squares;

    private Sharpness(double sharpestPx, double mostPx, float[] squares) {
        this.sharpestPx = sharpestPx;
        this.mostPx = mostPx;
        this.squares = squares;
    }

    static boolean differs(double sharpestPx, double otherPx) {
        return otherPx > ALIKE * sharpestPx;
    }

    /** Of frames that are equally sharp. */
    static Sharpness alike(double blurPx) {
        return new Sharpness(blurPx, blurPx, new float[0]);
    }

    /**
     * By the sharpest frame of a band.
     *
     * @param noise standard deviation of its pixels
     * @param mostPx the widest blur of the band
     */
    static Sharpness of(Plane sharpest, double noise, double sharpestPx, double mostPx) {
        Plane sharp = filled(sharpest);
        double wider = Math.sqrt(mostPx * mostPx - sharpestPx * sharpestPx);
        Plane soft = Gaussian.blur(sharp, wider);
        // what white noise leaves: 1 - 2 k(0) + sum k^2, with k the Gaussian
        double ofNoise = noise * noise * Math.max(0, 1 - 3 / (4 * Math.PI * wider * wider));
        Plane squares = new Plane(sharp.width(), sharp.height());
        for (int i = 0; i < squares.data().length; i++) {
            float off = sharp.data()[i] - soft.data()[i];
            squares.data()[i] = off * off;
        }
        float[] mean = Gaussian.blur(squares, NEIGHBOURHOOD * sharpestPx).data();
        for (int i = 0; i < mean.length; i++) {
            mean[i] = (float) Math.max(0, mean[i] - ofNoise);
        }
        return new Sharpness(sharpestPx, mostPx, mean);
    }

    private static Plane filled(Plane plane) {
        Plane filled = plane.copy();
        for (int i = 0; i < filled.data().length; i++) {
            filled.data()[i] = Float.isNaN(filled.data()[i]) ? 0 : filled.data()[i];
        }
        return filled;
    }

    /** The part of the most blurred frame's squared error that a frame with another blur has. */
    double part(double blurPx) {
        double excess = Math.max(0, blurPx * blurPx - sharpestPx * sharpestPx);
        double ratio = squares.length == 0 ? 0 : excess / (mostPx * mostPx - sharpestPx * sharpestPx);
        return ratio * ratio;
    }

    /** Squared error of the most blurred frame about a pixel; 0 if all frames are equally sharp. */
    float squaredError(int pixel) {
        return squares.length == 0 ? 0 : squares[pixel];
    }
}
