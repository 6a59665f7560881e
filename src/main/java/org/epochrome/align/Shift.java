package org.epochrome.align;

/**
 * A displacement in pixels, right and down, with its standard error per axis.
 *
 * @param x to the right
 * @param y downward
 * @param sigmaX standard error of x; infinite where nothing is known
 * @param sigmaY standard error of y
 */
public record Shift(double x, double y, double sigmaX, double sigmaY) {
    /** Nothing is known. */
    public static final Shift UNKNOWN = new Shift(0, 0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

    public boolean known() {
        return sigmaX < Double.POSITIVE_INFINITY && sigmaY < Double.POSITIVE_INFINITY;
    }

    /** The mean of two answers to one question, weighted; the errors are shared, so the mean is no surer than the surer. */
    Shift averaged(Shift other) {
        if (!known() || !other.known()) {
            return known() ? this : other;
        }
        double wx = square(other.sigmaX) / (square(sigmaX) + square(other.sigmaX));
        double wy = square(other.sigmaY) / (square(sigmaY) + square(other.sigmaY));
        return new Shift(
                wx * x + (1 - wx) * other.x,
                wy * y + (1 - wy) * other.y,
                Math.min(sigmaX, other.sigmaX),
                Math.min(sigmaY, other.sigmaY));
    }

    /** One displacement after another. */
    public Shift then(Shift next) {
        return new Shift(x + next.x, y + next.y, Math.hypot(sigmaX, next.sigmaX), Math.hypot(sigmaY, next.sigmaY));
    }

    private static double square(double v) {
        return v * v;
    }

    public double lengthPx() {
        return Math.hypot(x, y);
    }
}
