package org.epochrome.session.recipe;

import java.util.OptionalDouble;
import org.epochrome.text.Message;

/**
 * The position of a frame's disk as set by the user; it is not fitted then. In a colour frame it is that of the
 * green plane; red and blue are fitted in position only, with its radius and north angle.
 *
 * @param x centre, pixels of the frame
 * @param y row of the centre, pixels of the frame
 * @param equatorialRadiusPx equatorial radius, pixels of the frame, above 0
 * @param northAngleDeg north angle; empty to find it as in other frames
 */
public record ManualDisk(double x, double y, double equatorialRadiusPx, OptionalDouble northAngleDeg) {
    /** This disk on pixels that are a given number of times as wide. */
    public ManualDisk binned(int factor) {
        double middle = 0.5 * (factor - 1);
        return new ManualDisk((x - middle) / factor, (y - middle) / factor, equatorialRadiusPx / factor, northAngleDeg);
    }

    public ManualDisk {
        if (!(Double.isFinite(x) && Double.isFinite(y) && equatorialRadiusPx > 0 && equatorialRadiusPx < 1e5)) {
            throw new IllegalArgumentException(Message.text("value.disk", x, y, equatorialRadiusPx));
        }
        if (!(Math.abs(northAngleDeg.orElse(0)) <= 360)) {
            throw new IllegalArgumentException(Message.text("value.north"));
        }
    }
}
