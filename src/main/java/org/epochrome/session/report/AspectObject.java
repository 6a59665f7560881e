package org.epochrome.session.report;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.SortedMap;
import java.util.TreeMap;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.RotationSystem;

/** The object "ephemeris" of reports: an {@link Aspect}; of the sky of a site only with one. */
record AspectObject(
        SortedMap<String, Double> centralMeridianDeg,
        double subEarthLatitudeDeg,
        double subEarthLatitudeCentricDeg,
        double subSolarLatitudeDeg,
        double subSolarLatitudeCentricDeg,
        double subSolarLongitudeDeg,
        double poleAngleDeg,
        double sunPositionAngleDeg,
        double phaseAngleDeg,
        double phaseDefectArcsec,
        double phaseDefectAngleDeg,
        double distanceAu,
        double sunDistanceAu,
        double lightTimeS,
        double equatorialDiameterArcsec,
        double polarDiameterArcsec,
        double rightAscensionDeg,
        double declinationDeg,
        double elongationDeg,
        @JsonUnwrapped Aspect.Horizontal horizontal) {

    static AspectObject of(Aspect a) {
        SortedMap<String, Double> meridians = new TreeMap<>();
        for (RotationSystem system : a.body().systems()) {
            meridians.put(system.key(), a.centralMeridianDeg(system));
        }
        return new AspectObject(
                meridians,
                a.subEarthLatitudeDeg(),
                a.subEarthLatitudeCentricDeg(),
                a.subSolarLatitudeDeg(),
                a.subSolarLatitudeCentricDeg(),
                a.subSolarLongitudeDeg(),
                a.poleAngleDeg(),
                a.sunPositionAngleDeg(),
                a.phaseAngleDeg(),
                a.phaseDefectArcsec(),
                a.phaseDefectAngleDeg(),
                a.distanceAu(),
                a.sunDistanceAu(),
                a.lightTimeS(),
                a.equatorialDiameterArcsec(),
                a.polarDiameterArcsec(),
                a.rightAscensionDeg(),
                a.declinationDeg(),
                a.elongationDeg(),
                a.horizontal().orElse(null));
    }
}
