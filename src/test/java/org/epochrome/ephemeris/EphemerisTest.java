package org.epochrome.ephemeris;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class EphemerisTest {
    private static final Instant INSTANT = Instant.parse("2024-12-18T19:24:30Z");
    private static final Site SITE = new Site(46.2, 8.5, 480);

    /** Freeze: a break means that some number moved; find out why before renewing. */
    @Test
    void freeze() {
        Aspect jupiter = Ephemeris.aspect(Body.JUPITER, INSTANT, Optional.of(SITE));
        assertEquals(184.7182869, jupiter.centralMeridianDeg(RotationSystem.III), 1e-7);
        assertEquals(-6.2063549, jupiter.poleAngleDeg(), 1e-7);
        assertEquals(45.6586995, jupiter.horizontal().orElseThrow().altitudeDeg(), 1e-7);
        assertEquals(73.5730020, jupiter.rightAscensionDeg(), 1e-7);
    }

    @ParameterizedTest
    @EnumSource
    void hasTheSystemsOfItsBody(Body body) {
        Aspect aspect = Ephemeris.aspect(body, INSTANT, Optional.empty());
        assertEquals(body.systems().size(), aspect.centralMeridianDeg().size());
        assertTrue(body.systems().stream().allMatch(s -> aspect.centralMeridianDeg(s) >= 0));
        assertTrue(aspect.horizontal().isEmpty());
    }

    @Test
    void refusesASystemThatIsNotTheBodys() {
        Aspect mars = Ephemeris.aspect(Body.MARS, INSTANT, Optional.empty());
        var refused = assertThrows(IllegalArgumentException.class, () -> mars.centralMeridianDeg(RotationSystem.II));
        assertEquals("Mars has no longitude system II.", refused.getMessage());
    }

    @Test
    void warnsOfTheSun() {
        // Mercury never leaves the Sun by more than 28 degrees; Jupiter was at opposition eleven days before
        assertTrue(Ephemeris.aspect(Body.MERCURY, INSTANT, Optional.empty()).nearSun());
        assertFalse(Ephemeris.aspect(Body.JUPITER, INSTANT, Optional.empty()).nearSun());
    }

    @Test
    void theOutlineIsRounderWhenSeenFromAbove() {
        assertEquals(1, Body.SATURN.projectedAxisRatio(90), 1e-12);
        assertEquals(54364.0 / 60268.0, Body.SATURN.projectedAxisRatio(0), 1e-12);
        Aspect saturn = Ephemeris.aspect(Body.SATURN, INSTANT, Optional.empty());
        assertEquals(
                saturn.equatorialDiameterArcsec() * Body.SATURN.projectedAxisRatio(saturn.subEarthLatitudeCentricDeg()),
                saturn.polarDiameterArcsec(),
                1e-9);
    }

    @Test
    void aSiteShiftsTheBodyByItsParallax() {
        Aspect centre = Ephemeris.aspect(Body.VENUS, INSTANT, Optional.empty());
        Aspect site = Ephemeris.aspect(Body.VENUS, INSTANT, Optional.of(SITE));
        double parallaxArcsec = 3600
                * Math.hypot(
                        (site.rightAscensionDeg() - centre.rightAscensionDeg())
                                * Math.cos(Math.toRadians(centre.declinationDeg())),
                        site.declinationDeg() - centre.declinationDeg());
        double zenithDistance =
                Math.toRadians(90 - site.horizontal().orElseThrow().altitudeDeg());
        // 8.794 arcsec is the Sun's horizontal parallax (IAU); diurnal aberration adds up to 0.3, here 0.01
        assertEquals(8.794 / centre.distanceAu() * Math.sin(zenithDistance), parallaxArcsec, 0.03);
    }

    @Test
    void manyThreadsSeeTheSame() {
        Aspect alone = Ephemeris.aspect(Body.NEPTUNE, INSTANT, Optional.of(SITE));
        List<Aspect> together = IntStream.range(0, 64)
                .parallel()
                .mapToObj(i -> Ephemeris.aspect(Body.NEPTUNE, INSTANT, Optional.of(SITE)))
                .toList();
        together.forEach(aspect -> assertEquals(alone, aspect));
    }
}
