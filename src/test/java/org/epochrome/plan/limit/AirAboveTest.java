package org.epochrome.plan.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.epochrome.atmosphere.Air;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.truth.TruthTable;
import org.epochrome.truth.TruthTable.Row;
import org.junit.jupiter.api.Test;

class AirAboveTest {
    private static final double MM_HG = 1.33322368421;
    private static final List<Band> RGB = List.of(Band.R, Band.G, Band.B);
    private static final Resolution SHARP = new Resolution(new Telescope(280, 0.34, 5600, 2.9), new Seeing(0.5));

    /** Filippenko 1982, PASP 94, 715, table I, printed to 0.01 arcsec: what 400 nm lies above 700 nm. */
    @Test
    void theSpreadIsThatOfFilippenko1982() {
        AirAbove air = new AirAbove(Body.JUPITER, new Air(600 * MM_HG, 7, 1), SHARP);
        List<Row> rows = TruthTable.rows("atmosphere/filippenko.csv");
        assertEquals(5, rows.size());
        for (Row row : rows) {
            double altitude = Math.toDegrees(Math.asin(1 / row.number("airMass")));
            double spread = row.number("400") - row.number("700");
            double actual = air.spreadArcsec(altitude, List.of(new Band("X", new Passband(400, 700))));
            assertEquals(spread, actual, 0.01 + 0.01 * spread, row.toString());
        }
    }

    @Test
    void blueStandsHighestAndIsSmearedMost() {
        AirAbove air = new AirAbove(Body.JUPITER, Air.standardAt(480), SHARP);
        List<BandDispersion> bands = air.at(30, RGB);
        assertEquals(
                List.of("R", "G", "B"), bands.stream().map(b -> b.band().name()).toList());
        assertTrue(bands.get(0).shiftArcsec() < bands.get(1).shiftArcsec());
        assertTrue(bands.get(1).shiftArcsec() < bands.get(2).shiftArcsec());
        assertTrue(bands.get(0).smearArcsec() < bands.get(2).smearArcsec());
        assertTrue(bands.get(2).smearExceedsResolution());
        assertFalse(air.at(80, RGB).get(2).smearExceedsResolution());
    }

    @Test
    void atTheLowestAltitudeTheSmearIsTheResolutionAtTheZenith() {
        AirAbove air = new AirAbove(Body.JUPITER, Air.standardAt(480), SHARP);
        for (Band band : RGB) {
            double lowest = air.lowestAltitudeDeg(band);
            assertTrue(lowest > 5 && lowest < 90, band + ": " + lowest);
            BandDispersion there = air.at(lowest, List.of(band)).get(0);
            assertEquals(SHARP.arcsec(band.passband().effectiveNm(), 1), there.smearArcsec(), 1e-6, band.name());
        }
        assertEquals(5, air.lowestAltitudeDeg(Band.CH4), 0, "18 nm in the infrared are hardly smeared");
    }
}
