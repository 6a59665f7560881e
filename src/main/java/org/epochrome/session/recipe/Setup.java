package org.epochrome.session.recipe;

import java.util.OptionalDouble;
import org.epochrome.text.Message;

/**
 * How the camera looked at the sky, and on what mount.
 *
 * @param northDeg north angle of the reference frame, if known
 * @param mirroring whether frames are mirrored
 * @param scaleArcsecPerPx plate scale, if known; else it follows from the disk's apparent diameter
 * @param mount what keeps its direction in the camera
 */
public record Setup(OptionalDouble northDeg, Mirroring mirroring, OptionalDouble scaleArcsecPerPx, Mount mount) {
    /** To be found out, on an equatorial mount. */
    public static final Setup UNKNOWN =
            new Setup(OptionalDouble.empty(), Mirroring.AUTO, OptionalDouble.empty(), Mount.EQUATORIAL);

    public Setup {
        if (!(scaleArcsecPerPx.orElse(1) > 0)) {
            throw new IllegalArgumentException(Message.text("value.plateScale"));
        }
        if (!(Math.abs(northDeg.orElse(0)) <= 360)) {
            throw new IllegalArgumentException(Message.text("value.north"));
        }
    }

    /** This setup with another north angle, degrees; empty to find it. */
    public Setup north(OptionalDouble otherDeg) {
        return new Setup(otherDeg, mirroring, scaleArcsecPerPx, mount);
    }

    /** This setup with another mirroring. */
    public Setup with(Mirroring other) {
        return new Setup(northDeg, other, scaleArcsecPerPx, mount);
    }

    /** This setup with another plate scale, arcseconds per pixel; empty to find it. */
    public Setup scale(OptionalDouble otherArcsecPerPx) {
        return new Setup(northDeg, mirroring, otherArcsecPerPx, mount);
    }

    /** This setup with another mount. */
    public Setup with(Mount other) {
        return new Setup(northDeg, mirroring, scaleArcsecPerPx, other);
    }

    /** This setup with the known north angle, degrees, and mirroring of the reference frame. */
    public Setup posed(double knownNorthDeg, Mirroring knownMirroring) {
        return new Setup(OptionalDouble.of(knownNorthDeg), knownMirroring, scaleArcsecPerPx, mount);
    }
}
