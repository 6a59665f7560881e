package org.epochrome.session.recipe;

import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.text.Message;

/** What keeps its direction in the camera through the night. */
public enum Mount {
    /** The celestial pole. */
    EQUATORIAL {
        @Override
        double fixedAngleDeg(Aspect aspect) {
            return aspect.poleAngleDeg();
        }
    },
    /** The zenith: the rest of the sky turns with the parallactic angle. */
    ALTAZ {
        @Override
        double fixedAngleDeg(Aspect aspect) {
            double zenith = aspect.horizontal()
                    .map(Aspect.Horizontal::parallacticAngleDeg)
                    .orElseThrow(() -> new SessionRefused(Message.of("check.mountNeedsSite")));
            return aspect.poleAngleDeg() - zenith;
        }
    };

    /** Position angle of the body's pole from the direction that the mount holds. */
    abstract double fixedAngleDeg(Aspect aspect);

    /** The north angle in one frame by that in another. */
    public double carriedNorthDeg(double northDeg, Aspect from, Aspect to, boolean mirrored) {
        double change = fixedAngleDeg(to) - fixedAngleDeg(from);
        return Disk.wrapDeg(northDeg + (mirrored ? -change : change));
    }
}
