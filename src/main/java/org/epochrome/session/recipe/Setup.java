package org.epochrome.session.recipe;

import java.util.OptionalDouble;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.text.Message;

/**
 * How the camera looked at the sky, and on what mount.
 *
 * @param northDeg north angle of the reference frame, if known
 * @param mirroring whether frames are mirrored
 * @param scaleArcsecPerPx plate scale, if known; else it follows from the disk's apparent diameter
 * @param mount what keeps its direction in the camera
 */
public record Setup(
        @Choice(option = "north") OptionalDouble northDeg,
        @Choice(key = "mirrored") Mirroring mirroring,
        @Choice(option = "scale") OptionalDouble scaleArcsecPerPx,
        @Choice Mount mount)
        implements Choices<Setup> {
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

    /** This setup with the known north angle, degrees, and mirroring of the reference frame. */
    public Setup oriented(double knownNorthDeg, Mirroring knownMirroring) {
        return new Setup(OptionalDouble.of(knownNorthDeg), knownMirroring, scaleArcsecPerPx, mount);
    }
}
