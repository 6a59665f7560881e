package org.epochrome.moon;

/**
 * A place or a way on the sky axes of a body, equatorial radii.
 *
 * @param side at right angles to the projected pole, towards growing east longitude
 * @param pole along the projected north pole
 */
public record SkyPoint(double side, double pole) {
    public SkyPoint plus(SkyPoint other) {
        return new SkyPoint(side + other.side, pole + other.pole);
    }

    public SkyPoint minus(SkyPoint other) {
        return new SkyPoint(side - other.side, pole - other.pole);
    }

    public SkyPoint times(double factor) {
        return new SkyPoint(factor * side, factor * pole);
    }

    public double length() {
        return Math.hypot(side, pole);
    }
}
