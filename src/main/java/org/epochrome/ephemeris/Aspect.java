package org.epochrome.ephemeris;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;

/**
 * How a body stands at an instant as seen by an observer; everything for the moment the light left the body. Angles in
 * degrees; longitudes 0 to 360; latitudes planetographic unless the name says centric.
 *
 * @param body the planet
 * @param utc the instant at the observer
 * @param site the observer's place, if one was given; else the Earth's centre
 * @param centralMeridianDeg the geometric meridian facing the observer, per system, no phase correction
 * @param subEarthLatitudeDeg planetographic latitude of the surface point on the line from the body's centre to the
 *     observer
 * @param subEarthLatitudeCentricDeg the same, planetocentric (the ring opening B of Saturn)
 * @param subSolarLatitudeDeg planetographic latitude of the surface point below the Sun
 * @param subSolarLatitudeCentricDeg the same, planetocentric
 * @param subSolarLongitudeDeg planetographic longitude below the Sun, in the body's default system
 * @param poleAngleDeg P: position angle of the projected IAU north pole from the true celestial pole of date, through
 *     east, -180 to 180
 * @param sunPositionAngleDeg position angle of the Sun's direction as projected at the body, same sense; the phase
 *     defect lies opposite
 * @param phaseAngleDeg Sun - body - observer
 * @param distanceAu observer to body
 * @param sunDistanceAu Sun to body
 * @param lightTimeS seconds for the distance
 * @param equatorialDiameterArcsec apparent
 * @param polarDiameterArcsec apparent, of the projected ellipse (the sub-Earth latitude taken into account)
 * @param phaseDefectArcsec greatest width of the unlit crescent along the equator of illumination
 * @param rightAscensionDeg apparent, true equator and equinox of date, with light time and aberration
 * @param declinationDeg the same
 * @param elongationDeg angle between body and Sun as seen by the observer
 * @param horizontal where it stands in the site's sky; empty without a site
 */
public record Aspect(
        Body body,
        Instant utc,
        Optional<Site> site,
        Map<RotationSystem, Double> centralMeridianDeg,
        double subEarthLatitudeDeg,
        double subEarthLatitudeCentricDeg,
        double subSolarLatitudeDeg,
        double subSolarLatitudeCentricDeg,
        double subSolarLongitudeDeg,
        double poleAngleDeg,
        double sunPositionAngleDeg,
        double phaseAngleDeg,
        double distanceAu,
        double sunDistanceAu,
        double lightTimeS,
        double equatorialDiameterArcsec,
        double polarDiameterArcsec,
        double phaseDefectArcsec,
        double rightAscensionDeg,
        double declinationDeg,
        double elongationDeg,
        Optional<Horizontal> horizontal) {

    private static final double NEAR_SUN_DEG = 30;

    /**
     * Place in the sky of a site, without refraction.
     *
     * @param altitudeDeg true (airless) altitude
     * @param azimuthDeg from north through east, 0 to 360
     * @param parallacticAngleDeg position angle of the zenith from the true celestial pole of date, positive west of
     *     the meridian in the northern hemisphere, -180 to 180
     */
    public record Horizontal(double altitudeDeg, double azimuthDeg, double parallacticAngleDeg) {}

    public Aspect {
        centralMeridianDeg = Map.copyOf(centralMeridianDeg);
    }

    /** Whether the body is within 30 degrees of the Sun in the sky: mind the telescope and the eyes. */
    public boolean nearSun() {
        return elongationDeg < NEAR_SUN_DEG;
    }

    /** Position angle of the middle of the unlit crescent, 0 to 360: the side away from the Sun. */
    public double phaseDefectAngleDeg() {
        double angle = (sunPositionAngleDeg + 180) % 360;
        return angle < 0 ? angle + 360 : angle;
    }

    public double centralMeridianDeg(RotationSystem system) {
        Double cm = centralMeridianDeg.get(system);
        if (cm == null) {
            throw new IllegalArgumentException(body.displayName() + " has no longitude system " + system.key() + ".");
        }
        return cm;
    }
}
