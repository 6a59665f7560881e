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

    public double lengthPx() {
        return Math.hypot(x, y);
    }
}
