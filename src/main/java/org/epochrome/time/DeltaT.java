package org.epochrome.time;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import org.apache.commons.math3.analysis.polynomials.PolynomialFunction;

/**
 * Delta T = TT - UT1 before the leap seconds, by the polynomials of Espenak &amp; Meeus 2006, "Five Millennium Canon of
 * Solar Eclipses: -1999 to +3000" (NASA/TP-2006-214141). Good to about a second after 1900 and some seconds after 1700;
 * before 1600, when nobody had a telescope, the value of 1600 stands.
 */
final class DeltaT {
    /** Polynomial in years since the origin, from the year {@code from} on. */
    private record Piece(int from, double originYear, PolynomialFunction seconds) {
        Piece(int from, double originYear, double... coefficients) {
            this(from, originYear, new PolynomialFunction(coefficients));
        }
    }

    private static final Piece[] PIECES = {
        new Piece(1961, 1975, 45.45, 1.067, -1.0 / 260, -1.0 / 718),
        new Piece(1941, 1950, 29.07, 0.407, -1.0 / 233, 1.0 / 2547),
        new Piece(1920, 1920, 21.20, 0.84493, -0.076100, 0.0020936),
        new Piece(1900, 1900, -2.79, 1.494119, -0.0598939, 0.0061966, -0.000197),
        new Piece(1860, 1860, 7.62, 0.5737, -0.251754, 0.01680668, -0.0004473624, 1.0 / 233174),
        new Piece(
                1800,
                1800,
                13.72,
                -0.332447,
                0.0068612,
                0.0041116,
                -0.00037436,
                0.0000121272,
                -0.0000001699,
                0.000000000875),
        new Piece(1700, 1700, 8.83, 0.1603, -0.0059285, 0.00013336, -1.0 / 1174000),
        new Piece(1600, 1600, 120, -0.9808, -0.01532, 1.0 / 7129)
    };
    private static final int FIRST_YEAR = 1600;

    private DeltaT() {}

    /** Seconds at an instant of UT1, for 1600 to 1972. */
    static double seconds(Instant ut1) {
        OffsetDateTime date = ut1.atOffset(ZoneOffset.UTC);
        double year = Math.max(FIRST_YEAR, date.getYear() + (date.getDayOfYear() - 0.5) / 365.25);
        for (Piece piece : PIECES) {
            if (year >= piece.from) {
                return piece.seconds.value(year - piece.originYear);
            }
        }
        throw new IllegalStateException("no piece for the year " + year);
    }
}
