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
    private static final ZonalWind JUPITER = Body.JUPITER.wind().orElseThrow();
    private static final ZonalWind SATURN = Body.SATURN.wind().orElseThrow();

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
        assertEquals(0, mean(JUPITER.extraTurnDegPerDay(RotationSystem.I), -9, 9), 0.7);
        // Saturn's System I is of spots before 1980, when the jet at the clouds was some 50 to 100 m/s faster than in
        // 2004 to
        // 2008 (Sanchez-Lavega et al. 2003, Nature 423, 623): 4 to 8 degrees a day
        double saturn = mean(SATURN.extraTurnDegPerDay(RotationSystem.I), -10, 10);
        assertTrue(saturn < 0 && saturn > -8, "Saturn's equator runs at " + saturn);
    }

    @Test
    void theRestOfJupiterTurnsLikeSystemII() {
        // jets run on either side of System II: a mean within 2 degrees a day (25 m/s) against jets of up to 12
        assertEquals(0, mean(JUPITER.extraTurnDegPerDay(RotationSystem.II), 10.5, 60), 2);
        assertEquals(0, mean(JUPITER.extraTurnDegPerDay(RotationSystem.II), -60, -10.5), 2);
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

    /** Garcia-Melendo et al. 2011, table 1: rows between the nodes of the data file, and the error that the table gives. */
    @ParameterizedTest
    @CsvSource({
        "-88.1, 144.1, 9.9",
        "-79.4, -0.4, 1.4",
        "-74.2, 90.4, 4.7",
        "-68.0, -14.6, 1.8",
        "-61.0, 144.7, 7.3",
        "-56.1, 41.4, 3.8",
        "-48.9, 127.0, 11.3",
        "-40.3, -12.1, 2.8",
        "-32.3, 84.4, 4.6",
        "-30.0, 59.8, 3.4",
        "-19.4, 221.4, 3.7",
        "-12.7, 342.9, 5.1",
        "-8.6, 368.7, 4.6",
        "-5.4, 352.3, 8.1",
        "2.1, 347.9, 18.9",
        "8.6, 385.2, 6.4",
        "14.7, 306.3, 6.7",
        "22.6, 173.3, 3.0",
        "31.0, 73.7, 2.6",
        "35.2, 55.0, 1.3",
        "40.0, -20.7, 2.8",
        "47.8, 144.6, 13.3",
        "55.0, -2.3, 2.7",
        "61.7, 92.1, 2.5",
        "64.4, 63.2, 2.7",
        "66.5, 96.3, 1.8",
        "72.6, -11.3, 2.0",
        "77.9, 91.7, 4.4",
        "82.3, 20.3, 1.9"
    })
    void saturnsJetsAreWhereTheyAre(double latitude, double cassiniMs, double errorMs) {
        assertEquals(cassiniMs, SATURN.windMs(latitude), Math.max(4, 1.5 * errorMs));
    }

    @Test
    void aWindOnTheEquatorIsADriftInLongitude() {
        // 71 m/s on a circle of 71492 km
        double expected = 71 * 86400.0 / 71492000 * 180 / Math.PI;
        assertEquals(expected, JUPITER.extraTurnDegPerDay(RotationSystem.III).applyAsDouble(0), 1e-9);
    }

    @Test
    void systemsDifferByTheirRates() {
        for (double latitude = -90; latitude <= 90; latitude += 7.5) {
            assertEquals(
                    877.900 - 870.270,
                    JUPITER.extraTurnDegPerDay(RotationSystem.II).applyAsDouble(latitude)
                            - JUPITER.extraTurnDegPerDay(RotationSystem.I).applyAsDouble(latitude),
                    1e-9);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Body.class,
            names = {"JUPITER", "SATURN"})
    void isSmoothFromPoleToPole(Body body) {
        ZonalWind wind = body.wind().orElseThrow();
        DoubleUnaryOperator rate = wind.extraTurnDegPerDay(RotationSystem.III);
        double step = 0.001;
        for (double l = -84.9; l < 84.9; l += step) {
            double slope = (rate.applyAsDouble(l + step) - rate.applyAsDouble(l)) / step;
            double slopeBefore = (rate.applyAsDouble(l) - rate.applyAsDouble(l - step)) / step;
            // a kink would jump by degrees a day per degree of latitude; a curve changes by its curvature times the
            // step, and Saturn's polar jets bend by up to 100 per degree squared
            assertTrue(Math.abs(slope - slopeBefore) < 0.15, "kink at " + l);
        }
        assertTrue(Double.isFinite(rate.applyAsDouble(90)) && Double.isFinite(rate.applyAsDouble(-90)));
    }

    @Test
    void otherPlanetsHaveNone() {
        assertEquals(Optional.empty(), Body.MARS.wind());
    }
}
