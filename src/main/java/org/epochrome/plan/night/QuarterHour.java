package org.epochrome.plan.night;

import java.time.Instant;
import java.util.Map;
import java.util.OptionalDouble;
import org.epochrome.ephemeris.RotationSystem;

/**
 * The sky at one full quarter of an hour. Angles in degrees.
 *
 * @param utc the instant
 * @param altitudeDeg of the planet's centre, without refraction
 * @param apparentAltitudeDeg with refraction in standard air
 * @param azimuthDeg of the planet, from north through east, 0 to 360
 * @param parallacticAngleDeg position angle of the zenith from the celestial pole, -180 to 180
 * @param airMass empty below the horizon
 * @param aboveHorizon whether the planet stands above the site's own horizon
 * @param equatorialDiameterArcsec apparent
 * @param polarDiameterArcsec apparent
 * @param distanceAu from the observer
 * @param phaseAngleDeg Sun - planet - observer
 * @param illuminatedFraction lit part of the disk, 0 to 1
 * @param elongationDeg angle between planet and Sun in the sky
 * @param centralMeridianDeg by longitude system, 0 to 360
 * @param subEarthLatitudeDeg planetographic
 * @param subEarthLatitudeCentricDeg planetocentric
 * @param poleAngleDeg position angle P of the planet's north pole, -180 to 180
 * @param sunAltitudeDeg of the Sun's centre, without refraction
 * @param moonAltitudeDeg of the Moon's centre, without refraction
 * @param moonAzimuthDeg from north through east, 0 to 360
 * @param moonIlluminatedFraction lit part of the Moon's disk, 0 to 1
 * @param moonDistanceDeg angle between planet and Moon in the sky
 */
public record QuarterHour(
        Instant utc,
        double altitudeDeg,
        double apparentAltitudeDeg,
        double azimuthDeg,
        double parallacticAngleDeg,
        OptionalDouble airMass,
        boolean aboveHorizon,
        double equatorialDiameterArcsec,
        double polarDiameterArcsec,
        double distanceAu,
        double phaseAngleDeg,
        double illuminatedFraction,
        double elongationDeg,
        Map<RotationSystem, Double> centralMeridianDeg,
        double subEarthLatitudeDeg,
        double subEarthLatitudeCentricDeg,
        double poleAngleDeg,
        double sunAltitudeDeg,
        double moonAltitudeDeg,
        double moonAzimuthDeg,
        double moonIlluminatedFraction,
        double moonDistanceDeg) {
    public QuarterHour {
        centralMeridianDeg = Map.copyOf(centralMeridianDeg);
    }
}
