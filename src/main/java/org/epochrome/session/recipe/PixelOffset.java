package org.epochrome.session.recipe;

/**
 * A displacement on an image.
 *
 * @param x pixels to the right
 * @param y pixels down
 */
public record PixelOffset(double x, double y) {
    public double lengthPx() {
        return Math.hypot(x, y);
    }
}
