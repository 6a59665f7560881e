package org.epochrome.ephemeris;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.Optional;
import org.epochrome.time.TimeScales;
import org.junit.jupiter.api.Test;

/** Worked examples of Meeus 1998, Astronomical Algorithms, 2nd edition. Instants of TD are given as UTC, leap seconds off. */
class MeeusExamplesTest {
    /** Meeus' elements of rotation are those of 1988 and before: up to a tenth of a degree from those of 2015. */
    private static final double OLD_ELEMENTS_DEG = 0.1;

    /** Half of the last digit of angles printed to 0.01 degrees. */
    private static final double PRINTED_DEG = 0.005;

    private static final Instant TD_1992_DEC_16 = Instant.parse("1992-12-15T23:59:00.816Z");

    private static Aspect aspect(Body body, String utc) {
        return Ephemeris.aspect(body, Instant.parse(utc), Optional.empty());
    }

    @Test
    void mars42a() {
        Aspect mars = aspect(Body.MARS, "1992-11-09T00:00:00Z");
        assertEquals(12.44, mars.subEarthLatitudeCentricDeg(), PRINTED_DEG);
        assertEquals(-2.76, mars.subSolarLatitudeCentricDeg(), PRINTED_DEG);
        // Mars's prime meridian was redefined in 2000 and 2015, by 0.1 degrees and more
        assertEquals(111.55, mars.centralMeridianDeg(RotationSystem.SINGLE), 0.15);
        assertEquals(347.64 - 360, mars.poleAngleDeg(), PRINTED_DEG);
        // printed to 0.01 arcsec; the example takes 9.36 arcsec at 1 au for the diameter
        assertEquals(10.75, mars.equatorialDiameterArcsec(), 0.015);
        assertEquals(1.06, mars.phaseDefectArcsec(), 0.01);
    }

    @Test
    void jupiter43a() {
        Aspect jupiter = aspect(Body.JUPITER, "1992-12-16T00:00:00Z");
        assertEquals(-2.48, jupiter.subEarthLatitudeCentricDeg(), PRINTED_DEG);
        assertEquals(-2.20, jupiter.subSolarLatitudeCentricDeg(), 0.02);
        // Meeus' meridian is that of the lit disk: his step 16 adds this to the geometric one
        double lit = Math.toDegrees(Math.pow(Math.sin(Math.toRadians(jupiter.phaseAngleDeg() / 2)), 2));
        assertEquals(268.06, jupiter.centralMeridianDeg(RotationSystem.I) + lit, 0.02);
        // the constant of System II, 43.3 degrees at J2000.0, is rounded to 0.1 degrees in the IAU's reports
        assertEquals(72.74, jupiter.centralMeridianDeg(RotationSystem.II) + lit, OLD_ELEMENTS_DEG);
        assertEquals(24.80, jupiter.poleAngleDeg(), 0.02);
    }

    @Test
    void saturn45a() {
        Aspect saturn = Ephemeris.aspect(Body.SATURN, TD_1992_DEC_16, Optional.empty());
        // the ring's plane there is that of older theory, some hundredths of a degree from the IAU pole of 2015
        assertEquals(16.442, saturn.subEarthLatitudeCentricDeg(), 0.03);
        assertEquals(14.679, saturn.subSolarLatitudeCentricDeg(), 0.008);
        assertEquals(6.741, saturn.poleAngleDeg(), 0.03);
    }

    @Test
    void venus33a() {
        Aspect venus = aspect(Body.VENUS, "1992-12-19T23:59:00.816Z");
        // what the example gives for the complete VSOP87: 21h 04m 41.454s, -18 53' 16.84" (from memory)
        assertEquals(15 * (21 + 4 / 60.0 + 41.454 / 3600), venus.rightAscensionDeg(), 0.3 / 3600);
        assertEquals(-(18 + 53 / 60.0 + 16.84 / 3600), venus.declinationDeg(), 0.3 / 3600);
        assertEquals(0.910947, venus.distanceAu(), 5e-6);
    }

    @Test
    void venusInWashington13b() {
        Site washington = new Site(38.9213889, -77.0655556, 0);
        Aspect venus = Ephemeris.aspect(Body.VENUS, Instant.parse("1987-04-10T19:21:00Z"), Optional.of(washington));
        Aspect.Horizontal sky = venus.horizontal().orElseThrow();
        // Meeus counts azimuth from the south, and leaves out the parallax (6 arcsec) and UT1 - UTC (0.0015 degrees)
        assertEquals(68.0337 + 180, sky.azimuthDeg(), 0.0004);
        assertEquals(15.1249, sky.altitudeDeg(), 0.005);
    }

    @Test
    void parallacticAngleByChapter14() {
        Site site = new Site(38.9213889, -77.0655556, 0);
        for (int hour = 0; hour < 24; hour++) {
            Instant utc = Instant.parse("1987-04-10T00:21:00Z").plusSeconds(3600L * hour);
            Aspect venus = Ephemeris.aspect(Body.VENUS, utc, Optional.of(site));
            double gast = EarthOrientation.at(TimeScales.ttDaysSinceJ2000(utc), TimeScales.ut1DaysSinceJ2000(utc))
                    .apparentSiderealTimeRad();
            double h = gast + Math.toRadians(site.longitudeDeg() - venus.rightAscensionDeg());
            double latitude = Math.toRadians(site.latitudeDeg());
            double declination = Math.toRadians(venus.declinationDeg());
            double q = Math.toDegrees(Math.atan2(
                    Math.sin(h), Math.tan(latitude) * Math.cos(declination) - Math.sin(declination) * Math.cos(h)));
            // the formula takes the apparent place, Aspect the geometric one: 20 arcsec aside
            assertEquals(q, venus.horizontal().orElseThrow().parallacticAngleDeg(), 0.02, utc.toString());
        }
    }

    @Test
    void siderealTime12a() {
        double days = TimeScales.ut1DaysSinceJ2000(Instant.parse("1987-04-10T00:00:00Z"));
        double gast = EarthOrientation.at(days + 55.8 / 86400, days).apparentSiderealTimeRad();
        // 13h 10m 46.1351s with the precession and nutation of 1980: 0.01 s from today's
        assertEquals(15 * (13 + 10 / 60.0 + 46.1351 / 3600), Ephemeris.circle(Math.toDegrees(gast)), 0.01 * 15 / 3600);
    }

    @Test
    void nutation22a() {
        double centuries = TimeScales.ut1DaysSinceJ2000(Instant.parse("1987-04-10T00:00:00Z")) / 36525;
        Nutation nutation = Nutation.at(centuries);
        // the nutation of 1980 is some 0.02 arcsec off in longitude (Meeus 1998 gives 0.5 milliarcsec of that theory)
        assertEquals(-3.788, Math.toDegrees(nutation.longitudeRad()) * 3600, 0.03);
        assertEquals(9.443, Math.toDegrees(nutation.obliquityRad()) * 3600, 0.02);
    }
}
