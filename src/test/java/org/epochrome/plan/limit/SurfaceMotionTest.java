package org.epochrome.plan.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.Optional;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurfaceMotionTest {
    /**
     * Speed of the equator near opposition, 2 pi R / P, worked out for a chosen diameter. Jupiter by System I, 9 h 50.5 min:
     * 2 pi x 24 / 590.5 = 0.2554; Mars 24 h 37.4 min: 2 pi x 7.5 / 1477.4 = 0.03190; Saturn by System I, 10 h 14.0 min:
     * 2 pi x 9.5 / 614.0 = 0.0972; Uranus 17.24 h: 2 pi x 1.85 / 1034.4 = 0.01124; Neptune 15.966 h (Karkoschka 2011, as
     * the facts have it): 2 pi x 1.15 / 958.0 = 0.00754. The Earth's motion changes the rates by up to 0.2 %, Saturn's winds at
     * the equator differ from System I by 2 %.
     */
    @ParameterizedTest
    @CsvSource({
        "JUPITER, 2022-09-26T20:00:00Z, 48, 0.2554, 0.004",
        "MARS, 2022-12-08T06:00:00Z, 15, 0.03190, 0.004",
        "SATURN, 2022-08-14T18:00:00Z, 19, 0.0972, 0.02",
        "URANUS, 2022-11-09T08:00:00Z, 3.7, 0.01124, 0.004",
        "NEPTUNE, 2022-09-16T22:00:00Z, 2.3, 0.00754, 0.004"
    })
    void theEquatorMovesByItsCircumferenceInAPeriod(
            Body body, Instant utc, double diameterArcsec, double arcsecPerMin, double part) {
        double actual = SurfaceMotion.of(body, utc, "G").arcsecPerMin(0);
        double diameter = Ephemeris.aspect(body, utc, Optional.empty()).equatorialDiameterArcsec();
        assertEquals(arcsecPerMin, actual * diameterArcsec / diameter, part * arcsecPerMin);
    }

    /** Off the equator by the distance from the axis; an oblate globe's is greater than the cosine of the planetographic latitude. */
    @Test
    void latitudesMoveByTheirDistanceFromTheAxis() {
        SurfaceMotion mars = SurfaceMotion.of(Body.MARS, Instant.parse("2022-12-08T06:00:00Z"), "G");
        assertEquals(0.5, mars.arcsecPerMin(60) / mars.arcsecPerMin(0), 0.003);
        assertEquals(0, mars.arcsecPerMin(90), 1e-12);
        assertTrue(mars.fastestArcsecPerMin() >= mars.centreArcsecPerMin());
        SurfaceMotion jupiter = SurfaceMotion.of(Body.JUPITER, Instant.parse("2022-09-26T20:00:00Z"), "G");
        assertTrue(jupiter.degPerHour(0) > jupiter.degPerHour(60) + 0.2, "System I runs ahead by 7.6 degrees a day");
        assertEquals(36.27, jupiter.degPerHour(60), 0.1);
    }

    /** Venus turns once in 243 days, its clouds in about 4.4 (100 m/s at the equator). */
    @Test
    void ultravioletShowsTheCloudsOfVenus() {
        Instant utc = Instant.parse("2023-06-04T12:00:00Z");
        SurfaceMotion clouds = SurfaceMotion.of(Body.VENUS, utc, "UV");
        SurfaceMotion ground = SurfaceMotion.of(Body.VENUS, utc, "IR");
        assertEquals(360 / 4.4 / 24, clouds.degPerHour(0), 0.4);
        assertTrue(ground.degPerHour(0) < 0.2, "with the motion of the Earth " + ground.degPerHour(0));
    }
}
