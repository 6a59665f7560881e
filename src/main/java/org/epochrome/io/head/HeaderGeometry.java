package org.epochrome.io.head;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a frame lies on the sky by its header. Headers are not always right: a focal length may be that of the telescope without
 * its extender, a stack may have been turned since. So these are expectations, not facts.
 *
 * @param scaleArcsecPerPx plate scale, arcsec per pixel
 * @param scaleSource where the scale was found, for people: "CD matrix", "PIXSCALE"; empty without one
 * @param celestialNorthDeg angle from image up to celestial north, counter-clockwise positive as displayed, within -180 to
 *     180; north of the header's equinox, mostly J2000, up to 0.1 degrees from that of date in 20 years off the poles
 * @param mirrored whether the image has an odd number of reflections: east clockwise of north as displayed
 * @param northSource where north and mirroring were found, for people; empty without them
 */
public record HeaderGeometry(
        OptionalDouble scaleArcsecPerPx,
        String scaleSource,
        OptionalDouble celestialNorthDeg,
        Optional<Boolean> mirrored,
        String northSource) {
    /** Nothing is known. */
    public static final HeaderGeometry UNKNOWN =
            new HeaderGeometry(OptionalDouble.empty(), "", OptionalDouble.empty(), Optional.empty(), "");

    public HeaderGeometry {
        Objects.requireNonNull(scaleArcsecPerPx);
        Objects.requireNonNull(scaleSource);
        Objects.requireNonNull(celestialNorthDeg);
        Objects.requireNonNull(mirrored);
        Objects.requireNonNull(northSource);
    }

    /** Whether anything is known. */
    public boolean isKnown() {
        return scaleArcsecPerPx.isPresent() || celestialNorthDeg.isPresent();
    }

    /**
     * The angle from image up to the north pole of a body, counter-clockwise positive as displayed.
     *
     * @param poleAngleDeg position angle P of the pole, from celestial north through east
     * @return within -180 to 180 degrees; empty if celestial north or mirroring are not known
     */
    public OptionalDouble northAngleDeg(double poleAngleDeg) {
        if (celestialNorthDeg.isEmpty() || mirrored.isEmpty()) {
            return OptionalDouble.empty();
        }
        double turn = mirrored.get() ? -poleAngleDeg : poleAngleDeg;
        return OptionalDouble.of(Math.IEEEremainder(celestialNorthDeg.getAsDouble() + turn, 360));
    }
}
