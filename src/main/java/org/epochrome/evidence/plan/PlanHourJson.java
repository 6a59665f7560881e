package org.epochrome.evidence.plan;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import org.epochrome.plan.PlannedHour;
import org.epochrome.plan.limit.BandDispersion;
import org.epochrome.plan.night.QuarterHour;

/** An object of "hours" in the JSON of a plan. */
record PlanHourJson(
        Instant utc,
        boolean usable,
        double altitudeDeg,
        double apparentAltitudeDeg,
        double azimuthDeg,
        OptionalDouble airMass,
        double parallacticAngleDeg,
        double diameterArcsec,
        double diameterPx,
        double polarDiameterArcsec,
        double distanceAu,
        double phaseAngleDeg,
        double illuminatedFraction,
        double elongationDeg,
        SortedMap<String, Double> centralMeridianDeg,
        double subEarthLatitudeDeg,
        double poleAngleDeg,
        double sunAltitudeDeg,
        double moonAltitudeDeg,
        double moonAzimuthDeg,
        double moonIlluminatedFraction,
        double moonDistanceDeg,
        OptionalDouble spreadArcsec,
        List<Dispersed> bands) {

    /** A band at that time: its shift against green, and the smear within it. */
    private record Dispersed(
            String band,
            double dispersionArcsec,
            double dispersionPx,
            boolean dispersionExceedsResolution,
            double dispersionWithinArcsec,
            double dispersionWithinPx,
            boolean dispersionWithinExceedsResolution) {
        static Dispersed of(BandDispersion d, double scale) {
            return new Dispersed(
                    d.band().name(),
                    d.shiftArcsec(),
                    d.shiftArcsec() / scale,
                    d.shiftExceedsResolution(),
                    d.smearArcsec(),
                    d.smearArcsec() / scale,
                    d.smearExceedsResolution());
        }
    }

    /** @param scale arcsec per pixel */
    static PlanHourJson of(PlannedHour h, double scale) {
        QuarterHour sky = h.sky();
        SortedMap<String, Double> meridians = new TreeMap<>();
        sky.centralMeridianDeg().forEach((system, deg) -> meridians.put(system.key(), deg));
        return new PlanHourJson(
                sky.utc(),
                h.usable(),
                sky.altitudeDeg(),
                sky.apparentAltitudeDeg(),
                sky.azimuthDeg(),
                sky.airMass(),
                sky.parallacticAngleDeg(),
                sky.equatorialDiameterArcsec(),
                sky.equatorialDiameterArcsec() / scale,
                sky.polarDiameterArcsec(),
                sky.distanceAu(),
                sky.phaseAngleDeg(),
                sky.illuminatedFraction(),
                sky.elongationDeg(),
                meridians,
                sky.subEarthLatitudeDeg(),
                sky.poleAngleDeg(),
                sky.sunAltitudeDeg(),
                sky.moonAltitudeDeg(),
                sky.moonAzimuthDeg(),
                sky.moonIlluminatedFraction(),
                sky.moonDistanceDeg(),
                h.spreadArcsec(),
                h.bands().stream().map(d -> Dispersed.of(d, scale)).toList());
    }
}
