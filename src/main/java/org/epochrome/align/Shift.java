package org.epochrome.align;

/**
 * A displacement in pixels, right and down, with its standard errors.
 *
 * @param x to the right
 * @param y downward
 * @param sigmaX standard error of x; infinite where nothing is known
 * @param sigmaY standard error of y
 * @param covariance of x and y, square pixels: errors need not lie along the axes
 */
public record Shift(double x, double y, double sigmaX, double sigmaY, double covariance) {
    /** Nothing is known. */
    public static final Shift UNKNOWN = new Shift(0, 0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

    /** A displacement whose errors along the axes have nothing to do with each other. */
    public Shift(double x, double y, double sigmaX, double sigmaY) {
        this(x, y, sigmaX, sigmaY, 0);
    }

    public boolean known() {
        return sigmaX < Double.POSITIVE_INFINITY && sigmaY < Double.POSITIVE_INFINITY;
    }

    public double lengthPx() {
        return Math.hypot(x, y);
    }

    /** This shift on pixels that are smaller by a factor. */
    public Shift times(double factor) {
        return new Shift(factor * x, factor * y, factor * sigmaX, factor * sigmaY, factor * factor * covariance);
    }

    /** This shift with a standard error, pixels, added in quadrature in all directions. */
    public Shift withAddedSigma(double sigmaPx) {
        return new Shift(x, y, Math.hypot(sigmaX, sigmaPx), Math.hypot(sigmaY, sigmaPx), covariance);
    }

    /**
     * This shift with a standard error added in quadrature along one direction.
     *
     * @param sigmaPx standard error that is added, pixels
     * @param directionDeg from image up, counter-clockwise as displayed, or opposite to it
     */
    public Shift withAddedSigma(double sigmaPx, double directionDeg) {
        double right = -sigmaPx * Math.sin(Math.toRadians(directionDeg));
        double down = -sigmaPx * Math.cos(Math.toRadians(directionDeg));
        return new Shift(x, y, Math.hypot(sigmaX, right), Math.hypot(sigmaY, down), covariance + right * down);
    }

    /** The mean of two answers to one question, weighted; the errors are shared, so the mean is no surer than the surer. */
    Shift averaged(Shift other) {
        if (!known() || !other.known()) {
            return known() ? this : other;
        }
        double wx = square(other.sigmaX) / (square(sigmaX) + square(other.sigmaX));
        double wy = square(other.sigmaY) / (square(sigmaY) + square(other.sigmaY));
        double sx = Math.min(sigmaX, other.sigmaX);
        double sy = Math.min(sigmaY, other.sigmaY);
        double correlation = 0.5 * (correlation() + other.correlation());
        return new Shift(wx * x + (1 - wx) * other.x, wy * y + (1 - wy) * other.y, sx, sy, correlation * sx * sy);
    }

    private double correlation() {
        return covariance / (sigmaX * sigmaY);
    }

    /** One displacement after another. */
    public Shift then(Shift next) {
        return new Shift(
                x + next.x,
                y + next.y,
                Math.hypot(sigmaX, next.sigmaX),
                Math.hypot(sigmaY, next.sigmaY),
                covariance + next.covariance);
    }

    private static double square(double v) {
        return v * v;
    }
}
