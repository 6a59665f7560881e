package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.time.Instant;
import java.util.Optional;
import org.epochrome.atmosphere.Air;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Distances between places in flattened images, by plain vectors of the image. */
class AirFlatteningTest {
    private static final double PART = 0.05;

    private static View view(double northDeg, boolean mirrored, double zenithFromPoleDeg) {
        Globe globe = new Globe(0.9, 0.2, 1, 0, 0).through(new AirFlattening(PART, zenithFromPoleDeg));
        return new View(globe, new Disk(100, 90, 80, northDeg, mirrored));
    }

    /** On the sky the pole's direction and east make a left-handed pair, so angles turn over in a mirrored image. */
    @ParameterizedTest
    @CsvSource({"0,false,0", "0,false,40", "70,false,40", "-120,true,40", "25,true,-155"})
    void shortensWhatPointsToTheZenithAndNothingAcross(double northDeg, boolean mirrored, double fromPoleDeg) {
        View view = view(northDeg, mirrored, fromPoleDeg);
        double zenith = Math.toRadians(northDeg + (mirrored ? -fromPoleDeg : fromPoleDeg));
        double up = 80 * (1 - PART);
        assertPlace(view, 100 - up * Math.sin(zenith), 90 - up * Math.cos(zenith), fromPoleDeg);
        assertPlace(view, 100 + up * Math.sin(zenith), 90 + up * Math.cos(zenith), fromPoleDeg + 180);
        double east = zenith + Math.toRadians(mirrored ? -90 : 90);
        assertPlace(view, 100 - 80 * Math.sin(east), 90 - 80 * Math.cos(east), fromPoleDeg + 90);
    }

    /** A pixel, and the place on the sky one radius from the centre at a position angle from the pole's. */
    private static void assertPlace(View view, double x, double y, double fromPoleDeg) {
        double pole = Math.cos(Math.toRadians(fromPoleDeg));
        // The side axis points to position angle P - 90.
        double side = -Math.sin(Math.toRadians(fromPoleDeg));
        assertEquals(pole, view.pole(x, y), 1e-12);
        assertEquals(side, view.side(x, y), 1e-12);
        assertEquals(x, view.column(pole, side), 1e-10);
        assertEquals(y, view.row(pole, side), 1e-10);
    }

    /** How the direction of the zenith follows from an aspect, against the position angles on the sky. */
    @Test
    void takesTheZenithFromTheAspect() {
        Site site = new Site(46.2, 8.5, 480);
        Aspect aspect = Ephemeris.aspect(Body.JUPITER, Instant.parse("2024-12-18T17:00:00Z"), Optional.of(site));
        AirFlattening air = AirFlattening.of(aspect, new Air(957, 2, 0.6));
        assertEquals(
                aspect.horizontal().orElseThrow().parallacticAngleDeg(),
                aspect.poleAngleDeg() + air.zenithFromPoleDeg(),
                1e-9);
        // Slope of 58.294" tan z - 0.0668" tan^3 z (Smart 1977; Meeus 1998, chapter 16), by density; 1 % for the colour
        // and humidity.
        double altitude = Math.toRadians(aspect.horizontal().orElseThrow().altitudeDeg() + 2.6 / 60);
        double tan = 1 / Math.tan(altitude);
        double density = 957.0 / 1010 * 283.15 / 275.15;
        double slope = density * Math.toRadians((58.294 - 3 * 0.0668 * tan * tan) * (1 + tan * tan) / 3600);
        assertEquals(slope / (1 + slope), air.part(), 0.01 * slope);
    }

    @Test
    void needsASite() {
        Aspect aspect = Ephemeris.aspect(Body.JUPITER, Instant.parse("2024-12-18T17:00:00Z"), Optional.empty());
        assertSame(AirFlattening.NONE, AirFlattening.of(aspect, Air.standardAt(0)));
    }
}
