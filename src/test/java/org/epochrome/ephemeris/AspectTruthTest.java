package org.epochrome.ephemeris;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.epochrome.truth.TruthTable;
import org.epochrome.truth.TruthTable.Row;
import org.junit.jupiter.api.Test;

/** Aspects against other people's positions and an independent evaluation; see truth/aspect/README.md. */
class AspectTruthTest {
    /** Half of what is promised. Before 1972 the polynomial of Delta T is 0.2 s off, 0.002 degrees of Jupiter's turning. */
    private static final double MERIDIAN_DEG = 0.005;

    /** Half of what is promised; 2 arcsec in the place is 0.0006 degrees here. */
    private static final double DISK_DEG = 0.0025;

    /** Angles that tell where the Sun stands. Measured: 0.00016 degrees, which is the 0.6 arcsec that the truncation leaves. */
    private static final double SUN_DEG = 0.0004;

    /** Half the 2 arcsec promised for 1950 to 2050; the truncation leaves 0.6 arcsec. */
    private static final double PLACE_ARCSEC = 1.0;

    /** Uranus' correction to DE405 is fitted to 1960 to 2060 and drifts after it. */
    private static final double PLACE_AFTER_2060_ARCSEC = 2.0;

    private static final Instant YEAR_2060 = Instant.parse("2060-01-01T00:00:00Z");

    @Test
    void agreesWithDe405() {
        List<Row> rows = TruthTable.rows("aspect/rows-de405.csv");
        assertEquals(196, rows.size());
        assertEquals(EnumSet.allOf(Body.class), bodies(rows));
        for (Row row : rows) {
            Aspect aspect = aspect(row);
            assertPlace(row, aspect, PLACE_ARCSEC);
            assertDisk(row, aspect);
            // VSOP87's radius after the cut: 2e-5 au is a ten-thousandth of Neptune's apparent diameter
            assertEquals(row.number("distanceAu"), aspect.distanceAu(), 1e-4, () -> "distance: " + row);
            assertEquals(row.number("sunDistanceAu"), aspect.sunDistanceAu(), 1e-4, () -> "distance: " + row);
            assertEquals(row.number("lightTimeS"), aspect.lightTimeS(), 0.05, () -> "light time: " + row);
            assertEquals(row.number("diameterArcsec"), aspect.equatorialDiameterArcsec(), 2e-4, () -> "size: " + row);
            assertEquals(row.number("elongationDeg"), aspect.elongationDeg(), SUN_DEG, () -> "elongation: " + row);
            assertEquals(row.number("phaseDeg"), aspect.phaseAngleDeg(), SUN_DEG, () -> "phase: " + row);
            assertEquals(row.number("subSolarDeg"), aspect.subSolarLatitudeDeg(), SUN_DEG, () -> "Sun: " + row);
            assertAngle(row, "subSolarLongitudeDeg", aspect.subSolarLongitudeDeg(), MERIDIAN_DEG);
            // a direction is badly defined when the Sun stands almost behind the observer
            assertAngle(
                    row,
                    "sunAngleDeg",
                    aspect.sunPositionAngleDeg(),
                    0.001 / Math.sin(Math.toRadians(aspect.phaseAngleDeg())));
        }
    }

    @Test
    void agreesWithLibastroOutsideDe405() {
        List<Row> rows = TruthTable.rows("aspect/rows-libastro.csv");
        assertEquals(98, rows.size());
        assertEquals(EnumSet.allOf(Body.class), bodies(rows));
        rows.forEach(row -> assertDisk(row, aspect(row)));
    }

    @Test
    void agreesWithAProgramFittedToDe404() {
        List<Row> rows = TruthTable.rows("aspect/rows-aa.csv");
        assertEquals(147, rows.size());
        assertEquals(EnumSet.allOf(Body.class), bodies(rows));
        for (Row row : rows) {
            boolean late = Instant.parse(row.text("utc")).isAfter(YEAR_2060);
            assertPlace(row, aspect(row), late ? PLACE_AFTER_2060_ARCSEC : PLACE_ARCSEC);
        }
    }

    private static void assertDisk(Row row, Aspect aspect) {
        for (RotationSystem system : aspect.body().systems()) {
            String column = system == RotationSystem.SINGLE ? "cmSingle" : "cm" + system.key();
            assertAngle(row, column, aspect.centralMeridianDeg(system), MERIDIAN_DEG);
        }
        assertEquals(row.number("subEarthDeg"), aspect.subEarthLatitudeDeg(), DISK_DEG, () -> "latitude: " + row);
        assertEquals(row.number("subEarthCentricDeg"), aspect.subEarthLatitudeCentricDeg(), DISK_DEG, row::toString);
        assertAngle(row, "poleAngleDeg", aspect.poleAngleDeg(), DISK_DEG);
        assertEquals(row.has("altitudeDeg"), aspect.horizontal().isPresent());
        aspect.horizontal().ifPresent(sky -> {
            assertEquals(row.number("altitudeDeg"), sky.altitudeDeg(), DISK_DEG, () -> "altitude: " + row);
            // near the zenith azimuth and parallactic angle are badly defined
            double tolerance = DISK_DEG / Math.cos(Math.toRadians(sky.altitudeDeg()));
            assertAngle(row, "azimuthDeg", sky.azimuthDeg(), tolerance);
            assertAngle(row, "parallacticDeg", sky.parallacticAngleDeg(), tolerance);
        });
    }

    private static void assertPlace(Row row, Aspect aspect, double toleranceArcsec) {
        double dDec = aspect.declinationDeg() - row.number("decDeg");
        double dRa = difference(aspect.rightAscensionDeg(), row.number("raDeg"))
                * Math.cos(Math.toRadians(aspect.declinationDeg()));
        double offArcsec = 3600 * Math.hypot(dRa, dDec);
        assertTrue(offArcsec < toleranceArcsec, () -> offArcsec + " arcsec off: " + row);
    }

    private static void assertAngle(Row row, String column, double actual, double toleranceDeg) {
        assertEquals(
                0, difference(actual, row.number(column)), toleranceDeg, () -> column + " is " + actual + ": " + row);
    }

    private static double difference(double a, double b) {
        return Math.IEEEremainder(a - b, 360);
    }

    private static Set<Body> bodies(List<Row> rows) {
        Set<Body> bodies = EnumSet.noneOf(Body.class);
        rows.forEach(row -> bodies.add(body(row)));
        return bodies;
    }

    private static Body body(Row row) {
        return Body.named(row.text("body")).orElseThrow();
    }

    private static Aspect aspect(Row row) {
        Optional<Site> site = row.has("latitudeDeg")
                ? Optional.of(new Site(row.number("latitudeDeg"), row.number("longitudeDeg"), row.number("heightM")))
                : Optional.empty();
        return Ephemeris.aspect(body(row), Instant.parse(row.text("utc")), site);
    }
}
