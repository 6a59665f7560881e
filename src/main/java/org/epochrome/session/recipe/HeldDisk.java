package org.epochrome.session.recipe;

import java.util.OptionalDouble;

/**
 * Where a frame's disk lies by the user's own judgement; it is not fitted then. In a colour frame the place is that of the
 * green plane; red and blue are placed as they lie, with its radius and north angle.
 *
 * @param x centre, pixels of the frame
 * @param y the same
 * @param equatorialRadiusPx equatorial radius, pixels of the frame, above 0
 * @param northAngleDeg north angle; empty to find it as in other frames
 */
public record HeldDisk(double x, double y, double equatorialRadiusPx, OptionalDouble northAngleDeg) {
    /** The same on pixels that are so many times as wide. */
    public HeldDisk binned(int factor) {
        double middle = 0.5 * (factor - 1);
        return new HeldDisk((x - middle) / factor, (y - middle) / factor, equatorialRadiusPx / factor, northAngleDeg);
    }

    public HeldDisk {
        if (!(Double.isFinite(x) && Double.isFinite(y) && equatorialRadiusPx > 0 && equatorialRadiusPx < 1e5)) {
            throw new IllegalArgumentException("A disk needs a centre and a radius above 0, in pixels, not " + x + ", "
                    + y + ", " + equatorialRadiusPx + ".");
        }
        if (!(Math.abs(northAngleDeg.orElse(0)) <= 360)) {
            throw new IllegalArgumentException("A north angle must be between -360 and 360 degrees.");
        }
    }
}
