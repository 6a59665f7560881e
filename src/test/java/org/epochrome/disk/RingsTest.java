package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RingsTest {
    private static final Rings RINGS = Rings.of(Body.SATURN).orElseThrow();
    private static final double RATIO = 54_364 / 60_268.0;

    /** At opposition: the Sun stands where the observer does. */
    private static Globe open(double openingDeg) {
        double b = Math.toRadians(openingDeg);
        return new Globe(RATIO, b, Math.cos(b), 0, Math.sin(b), Optional.of(RINGS));
    }

    private static View view(double openingDeg) {
        return new View(open(openingDeg), new Disk(0, 0, 1, 0, false));
    }

    private static double slant(View view, double pole) {
        return Rings.slantDepth(view, pole, 0, view.depth(pole, 0));
    }

    /** Diameters of the A and B rings against the globe's: 2.2694 and 1.9499 (French et al. 2017, table 1, in km). */
    @Test
    void edgesAreThePublishedOnes() {
        assertEquals(136_774 / 60_268.0, RINGS.outerEdge(), 1e-9);
        assertEquals(117_516 / 60_268.0, RINGS.outer(1), 1e-9);
        for (int region = 0; region < RINGS.regions(); region++) {
            assertTrue(RINGS.inner(region) < RINGS.outer(region));
        }
    }

    /**
     * C and B by the table "Vital Statistics for Saturn's Rings and Inner Satellites" of the Ring-Moon Systems Node of NASA's Planetary
     * Data System (pds-rings.seti.org, saturn_tables.html); A and the Encke gap by the ring model in the examples of NAIF's
     * SPICE Toolkit (required reading about kernels), which is older and rounder. Apart from each other by what the
     * edges' own shapes and the rounding come to: 60 and 130 km, a tenth of a pixel of a large Saturn.
     */
    @ParameterizedTest
    @CsvSource({
        "74491, 74490, 60",
        "91975, 91983, 60",
        "117570, 117516, 60",
        "122170, 122053, 130",
        "133405, 133423, 130",
        "133730, 133745, 130",
        "136780, 136774, 130"
    })
    void edgesAgreeWithOtherTables(double publishedKm, double ownKm, double withinKm) {
        assertEquals(publishedKm, ownKm, withinKm);
        double own = ownKm / 60_268.0;
        boolean found = false;
        for (int region = 0; region < RINGS.regions(); region++) {
            found |= Math.abs(RINGS.inner(region) - own) < 1e-9 || Math.abs(RINGS.outer(region) - own) < 1e-9;
        }
        assertTrue(found, "no edge at " + ownKm + " km");
    }

    /** Ranges of the same table of the Ring-Moon Systems Node, at the middles of its regions C and B1 to B4. */
    @ParameterizedTest
    @CsvSource({"83233, 0.05, 0.35", "95500, 1.1, 1.5", "101500, 1.5, 4", "107000, 1, 5", "113250, 2, 3"})
    void depthsLieInThePublishedRanges(double radiusKm, double least, double most) {
        double depth = RINGS.opticalDepth(radiusKm / 60_268.0);
        assertTrue(depth >= least && depth <= most, radiusKm + " km: " + depth);
    }

    /** The C ring and the Cassini Division are thin, the B ring is thicker than the A ring, gaps and sky are empty. */
    @Test
    void opticalDepths() {
        assertEquals(0, RINGS.opticalDepth(1.1));
        assertEquals(0, RINGS.opticalDepth(133_600 / 60_268.0));
        assertEquals(0, RINGS.opticalDepth(2.3));
        assertTrue(RINGS.opticalDepth(1.3) < 0.2);
        assertTrue(RINGS.opticalDepth(119_500 / 60_268.0) < 0.2);
        assertTrue(RINGS.opticalDepth(1.8) > 2 * RINGS.opticalDepth(2.1));
    }

    /** Semi-axes of the outer edge are a and a sin B, as an almanac gives them. */
    @ParameterizedTest
    @ValueSource(doubles = {-26.7, -10, 1.5, 20})
    void theOuterEdgeIsAnEllipse(double openingDeg) {
        double[] most = new double[3];
        Rings.walk(open(openingDeg), 0.004, (region, part, pole, side, area) -> {
            most[0] = Math.max(most[0], Math.abs(side));
            most[1] = Math.max(most[1], -Math.signum(openingDeg) * pole);
            most[2] += area;
        });
        double sine = Math.abs(Math.sin(Math.toRadians(openingDeg)));
        assertEquals(RINGS.outerEdge(), most[0], 0.003);
        assertEquals(RINGS.outerEdge() * sine, most[1], 0.003 * sine);
        double whole = 0;
        for (int region = 0; region < RINGS.regions(); region++) {
            whole += Math.PI * sine * (square(RINGS.outer(region)) - square(RINGS.inner(region)));
        }
        // What the globe hides and shades of it is at opposition the same: less than a fifth.
        assertTrue(most[2] < whole && most[2] > 0.78 * whole, most[2] + " of " + whole);
    }

    /** With the observer in the north the near side crosses the globe's south. */
    @Test
    void theNearSideCrossesTheGlobe() {
        View view = view(15);
        double across = -1.8 * Math.sin(Math.toRadians(15));
        // At opposition ring and its shadow lie in one line: light passes the same ring twice.
        assertEquals(2 * RINGS.opticalDepth(1.8) / Math.sin(Math.toRadians(15)), slant(view, across), 1e-6);
        assertEquals(0, slant(view, -across), 0);
        View south = view(-15);
        assertEquals(0, slant(south, across), 0);
        assertTrue(slant(south, -across) > 5);
    }

    /** With the Sun 8 degrees higher than the observer the shadow falls south of the ring in front. */
    @Test
    void theShadowFallsAwayFromTheSun() {
        double b = Math.toRadians(12);
        double sun = Math.toRadians(20);
        Globe globe = new Globe(1, b, Math.cos(sun), 0, Math.sin(sun), Optional.of(RINGS));
        View view = new View(globe, new Disk(0, 0, 1, 0, false));
        // The Sun's ray through the ring at radius r goes on for t until it meets the unit sphere.
        double radius = 1.8;
        double way = radius * Math.cos(sun) - Math.sqrt(1 - square(radius * Math.sin(sun)));
        double pole = -way * Math.sin(sun) * Math.cos(b) - (radius - way * Math.cos(sun)) * Math.sin(b);
        double infront = -pole / Math.sin(b);
        double seen = RINGS.opticalDepth(infront) / Math.sin(b);
        assertEquals(RINGS.opticalDepth(radius) / Math.sin(sun) + seen, slant(view, pole), 1e-6);
        // The ring itself is seen further north.
        assertTrue(infront > radius, "seen at " + infront);
    }

    /** The Sun in the east: the shadow lies on the rings west of the far side, as wide as the globe. */
    @Test
    void theGlobeShadesTheFarRings() {
        double phase = Math.toRadians(6);
        Globe globe = new Globe(
                RATIO,
                0.35,
                Math.cos(0.35) * Math.cos(phase),
                Math.cos(0.35) * Math.sin(phase),
                Math.sin(0.35),
                Optional.of(RINGS));
        assertFalse(Rings.inShadow(globe, 2, 0));
        assertTrue(Rings.inShadow(globe, -2 * Math.cos(phase), -2 * Math.sin(phase)));
        assertFalse(Rings.inShadow(globe, 0, 2));
        assertFalse(Rings.inShadow(globe, -1.5, 1.05));
    }

    /** A ring as bright as the even globe sends the light of its visible area. */
    @Test
    void thePictureHoldsTheRingsLight() {
        int[] first = RingLight.places(RINGS, 0.1);
        double[] even = new double[first[first.length - 1]];
        java.util.Arrays.fill(even, 0.5);
        View view = new View(open(20), new Disk(100, 60, 40, 7, false));
        double[] area = new double[1];
        Rings.walk(view.globe(), 0.005, (region, part, pole, side, a) -> area[0] += a);
        Plane picture = new RingLight(first, even).picture(view, new Shading(1, 1.2, Smear.NONE), 200, 120);
        double sum = 0;
        for (float v : picture.data()) {
            sum += v;
        }
        assertEquals(0.5 * area[0] * 40 * 40, sum, 3e-5 * sum);
    }

    private static double square(double v) {
        return v * v;
    }
}
