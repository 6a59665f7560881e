package org.epochrome.ephemeris;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ZonalWindTest {
    private static final ZonalWind JUPITER = ZonalWind.of(Body.JUPITER).orElseThrow();
    private static final ZonalWind SATURN = ZonalWind.of(Body.SATURN).orElseThrow();

    private static double mean(DoubleUnaryOperator f, double from, double to) {
        double sum = 0;
        for (int i = 0; i < 200; i++) {
            sum += f.applyAsDouble(from + (i + 0.5) / 200 * (to - from));
        }
        return sum / 200;
    }

    @Test
    void theEquatorTurnsLikeSystemI() {
        // System I is the mean of spots within 10 degrees of the equator, System II of those beyond (Jupiter); the jets
        // within a zone differ from its mean by ten times what is allowed here
        assertEquals(0, mean(l -> JUPITER.extraTurnDegPerDay(l, RotationSystem.I), -9, 9), 0.7);
        assertEquals(0, mean(l -> SATURN.extraTurnDegPerDay(l, RotationSystem.I), -15, 15), 2.5);
    }

    @Test
    void theRestOfJupiterTurnsLikeSystemII() {
        // jets run on either side of System II: a mean within 2 degrees a day (25 m/s) against jets of up to 12
        assertEquals(0, mean(l -> JUPITER.extraTurnDegPerDay(l, RotationSystem.II), 10.5, 60), 2);
        assertEquals(0, mean(l -> JUPITER.extraTurnDegPerDay(l, RotationSystem.II), -60, -10.5), 2);
    }

    /**
     * Tollefson et al. 2017, rows of the published table between the nodes of the code; its own error is 4 to 9 m/s. Last
     * column: Porco et al. 2003 from Cassini, peaks, from memory, which differ by what winds change in 17 years.
     */
    @ParameterizedTest
    @CsvSource({
        "-52.65, 39.5, 36",
        "-36.55, 49.2, 35",
        "-26.05, 34.6, 44",
        "-20.75, -51.1, -55",
        "-10.50, 47.0, 50",
        "-6.60, 140, 135",
        "0.50, 70.8, 80",
        "6.60, 107, 105",
        "17.30, -22.2, -25",
        "24.20, 139, 142",
        "31.50, -25.4, -32",
        "35.50, 36.0, 32",
        "56.50, 17.0, 20"
    })
    void jupitersJetsAreWhereTheyAre(double latitude, double hubbleMs, double cassiniMs) {
        assertEquals(hubbleMs, JUPITER.windMs(latitude), 5);
        assertEquals(cassiniMs, JUPITER.windMs(latitude), 20);
    }

    @Test
    void aWindOnTheEquatorIsADriftInLongitude() {
        // 71 m/s on a circle of 71492 km
        double expected = 71 * 86400.0 / 71492000 * 180 / Math.PI;
        assertEquals(expected, JUPITER.extraTurnDegPerDay(0, RotationSystem.III), 1e-9);
    }

    @Test
    void systemsDifferByTheirRates() {
        for (double latitude = -90; latitude <= 90; latitude += 7.5) {
            assertEquals(
                    877.900 - 870.270,
                    JUPITER.extraTurnDegPerDay(latitude, RotationSystem.II)
                            - JUPITER.extraTurnDegPerDay(latitude, RotationSystem.I),
                    1e-9);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Body.class,
            names = {"JUPITER", "SATURN"})
    void isSmoothFromPoleToPole(Body body) {
        ZonalWind wind = ZonalWind.of(body).orElseThrow();
        DoubleUnaryOperator rate = l -> wind.extraTurnDegPerDay(l, RotationSystem.III);
        double step = 0.01;
        for (double l = -84.9; l < 84.9; l += step) {
            double slope = (rate.applyAsDouble(l + step) - rate.applyAsDouble(l)) / step;
            double slopeBefore = (rate.applyAsDouble(l) - rate.applyAsDouble(l - step)) / step;
            // a kink would jump by degrees a day per degree of latitude; a curve changes by its curvature times the
            // step
            assertTrue(Math.abs(slope - slopeBefore) < 0.15, "kink at " + l);
        }
        assertTrue(Double.isFinite(rate.applyAsDouble(90)) && Double.isFinite(rate.applyAsDouble(-90)));
    }

    @Test
    void otherPlanetsHaveNone() {
        assertEquals(Optional.empty(), ZonalWind.of(Body.MARS));
    }
}
