package org.epochrome.disk;

import java.util.Optional;
import org.epochrome.ephemeris.Aspect;

/**
 * A lit oblate spheroid as seen from afar: what of an {@link Aspect} matters for the picture of its surface.
 *
 * <p>Body axes: X in the equator towards the meridian that faces the observer, Y in the equator 90 degrees east of it (in
 * the sense of east longitude about the IAU north pole), Z along the north pole; lengths in equatorial radii.
 *
 * @param axisRatio polar over equatorial radius
 * @param tilt planetocentric sub-Earth latitude, radians
 * @param sunX unit vector to the Sun on the body axes
 * @param sunY the same
 * @param sunZ the same
 * @param rings what lies around it
 * @param air how the air that it is seen through flattens its image
 */
public record Globe(
        double axisRatio,
        double tilt,
        double sunX,
        double sunY,
        double sunZ,
        Optional<Rings> rings,
        AirFlattening air) {

    /** A globe seen without air. */
    public Globe(double axisRatio, double tilt, double sunX, double sunY, double sunZ, Optional<Rings> rings) {
        this(axisRatio, tilt, sunX, sunY, sunZ, rings, AirFlattening.NONE);
    }

    /** A globe without rings. */
    public Globe(double axisRatio, double tilt, double sunX, double sunY, double sunZ) {
        this(axisRatio, tilt, sunX, sunY, sunZ, Optional.empty());
    }

    /** The globe as it stands, seen without air. */
    public static Globe of(Aspect aspect) {
        double east = Math.toRadians(aspect.subSolarLongitudeDeg()
                - aspect.centralMeridianDeg(aspect.body().defaultSystem()));
        if (aspect.body().prograde()) {
            east = -east;
        }
        double latitude = Math.toRadians(aspect.subSolarLatitudeCentricDeg());
        return new Globe(
                aspect.body().axisRatio(),
                Math.toRadians(aspect.subEarthLatitudeCentricDeg()),
                Math.cos(latitude) * Math.cos(east),
                Math.cos(latitude) * Math.sin(east),
                Math.sin(latitude),
                Rings.of(aspect.body()));
    }

    /** This globe as it appears through air: flattened by refraction. */
    public Globe through(AirFlattening other) {
        return new Globe(axisRatio, tilt, sunX, sunY, sunZ, rings, other);
    }

    /** This globe with another ratio of polar to equatorial radius. */
    public Globe withAxisRatio(double other) {
        return new Globe(other, tilt, sunX, sunY, sunZ, rings, air);
    }

    public boolean ringed() {
        return rings.isPresent();
    }

    /** Radius of globe and rings, in equatorial radii. */
    public double extent() {
        return rings.map(Rings::outerEdge).orElse(1.0);
    }

    /** The limb ellipse's semi-axis along the projected pole, in equatorial radii. */
    public double apparentAxisRatio() {
        return Math.hypot(Math.sin(tilt), axisRatio * Math.cos(tilt));
    }

    /** Cosine of the phase angle. */
    public double cosPhase() {
        return Math.cos(tilt) * sunX + Math.sin(tilt) * sunZ;
    }
}
