package org.epochrome.atmosphere;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.epochrome.truth.TruthTable;
import org.epochrome.truth.TruthTable.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** See truth/atmosphere/README.md. */
class RefractionTest {
    private static final List<Row> ROWS = TruthTable.rows("atmosphere/refraction.csv");

    private static Air air(Row row) {
        return new Air(row.number("hPa"), row.number("celsius"), row.number("humidity"));
    }

    private static double actual(Row row) {
        return Refraction.arcsec(row.number("nm"), row.number("trueAltitudeDeg"), air(row));
    }

    @Test
    void agreesWithTracedRays() {
        assertEquals(200, ROWS.size());
        for (Row row : ROWS) {
            double altitude = row.number("trueAltitudeDeg");
            // what the class promises: the expansion to tan^3 runs away towards the horizon
            double tolerance = altitude > 25 ? 0.02 : altitude > 14.9 ? 0.25 : altitude > 9.8 ? 1.5 : 20;
            assertEquals(row.number("tracedArcsec"), actual(row), tolerance, row::toString);
        }
    }

    @Test
    void agreesWithErfa() {
        int compared = 0;
        for (Row row : ROWS) {
            if (row.number("trueAltitudeDeg") > 14) {
                // two ways to the same two terms: 0.2 %
                assertEquals(row.number("refcoArcsec"), actual(row), 0.002 * row.number("refcoArcsec"), row::toString);
                compared++;
            }
        }
        assertEquals(150, compared);
    }

    @Test
    void coloursAgreeFarBetter() {
        int compared = 0;
        for (Row green : ROWS) {
            if (green.number("nm") != 540) {
                continue;
            }
            for (Row row : ROWS) {
                if (air(row).equals(air(green))
                        && apparentAltitude(row) == apparentAltitude(green)
                        && row.number("nm") != 540) {
                    double traced = row.number("tracedArcsec") - green.number("tracedArcsec");
                    double altitude = apparentAltitude(row);
                    // what the class promises, and a little
                    double tolerance = altitude > 14 ? 0.003 : altitude > 9 ? 0.02 : 0.3;
                    assertEquals(traced, actual(row) - actual(green), tolerance, row::toString);
                    compared++;
                }
            }
        }
        assertEquals(160, compared);
    }

    /** To the half degree, as the rays were started. */
    private static double apparentAltitude(Row row) {
        return 0.5 * Math.round(2 * (row.number("trueAltitudeDeg") + row.number("tracedArcsec") / 3600));
    }

    /**
     * Against the slope of Smart's R = 58.294" tan z - 0.0668" tan^3 z, z the apparent zenith distance, for 1010 hPa and 10 degrees
     * (Smart 1977, Textbook on Spherical Astronomy; Meeus 1998, Astronomical Algorithms, chapter 16). Its colour is not stated;
     * from yellow to green the slope grows by 0.6 %.
     */
    @ParameterizedTest
    @ValueSource(doubles = {15, 21, 30, 46, 70})
    void shortensTheVertical(double apparentDeg) {
        double tan = 1 / Math.tan(Math.toRadians(apparentDeg));
        double arcsec = 58.294 * tan - 0.0668 * tan * tan * tan;
        double slope = Math.toRadians((58.294 - 3 * 0.0668 * tan * tan) * (1 + tan * tan) / 3600);
        double expected = slope / (1 + slope);
        double actual = Refraction.verticalShortening(575, apparentDeg - arcsec / 3600, new Air(1010, 10, 0));
        assertEquals(expected, actual, 0.01 * expected);
    }

    /** The slope is that of the refraction itself; differences over 0.02 degrees are good to a millionth of it. */
    @ParameterizedTest
    @ValueSource(doubles = {6, 15, 46, 89})
    void shorteningIsTheSlope(double trueDeg) {
        Air air = new Air(955, 2, 0.6);
        double slope = (Refraction.arcsec(540, trueDeg - 0.01, air) - Refraction.arcsec(540, trueDeg + 0.01, air)) / 72;
        assertEquals(slope, Refraction.verticalShortening(540, trueDeg, air), 1e-5 * slope);
    }

    @Test
    void isNothingAtTheZenith() {
        assertEquals(0, Refraction.arcsec(540, 90, Air.standardAt(0)), 1e-9);
    }

    @Test
    void saysWhereItEnds() {
        var refused =
                assertThrows(IllegalArgumentException.class, () -> Refraction.arcsec(540, 4.9, Air.standardAt(0)));
        assertTrue(refused.getMessage().contains("4.9"));
    }
}
