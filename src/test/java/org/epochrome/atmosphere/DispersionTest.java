package org.epochrome.atmosphere;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.truth.TruthTable;
import org.epochrome.truth.TruthTable.Row;
import org.junit.jupiter.api.Test;

class DispersionTest {
    private static final double MM_HG = 1.33322368421;

    @Test
    void agreesWithFilippenko1982() {
        List<Row> rows = TruthTable.rows("atmosphere/filippenko.csv");
        assertEquals(5, rows.size());
        // 8 mm of vapour at 7 C, as the table has it, is a little over saturation; it counts for 0.005 arcsec
        Air air = new Air(600 * MM_HG, 7, 1);
        int compared = 0;
        for (Row row : rows) {
            double apparentAltitude = Math.toDegrees(Math.asin(1 / row.number("airMass")));
            Dispersion dispersion = new Dispersion(500, apparentAltitude, air);
            for (String nm : row.header().subList(1, row.header().size())) {
                double actual = dispersion.shiftArcsec(Double.parseDouble(nm));
                // printed to 0.01 with the refractivities of 1966: half a unit, and 1 % beside
                assertEquals(row.number(nm), actual, 0.006 + 0.01 * Math.abs(row.number(nm)), nm + " nm: " + row);
                compared++;
            }
        }
        assertEquals(70, compared);
    }

    @Test
    void theMeanOverABandIsTheIntegral() {
        Dispersion dispersion = new Dispersion(540, 20, Air.standardAt(480));
        for (Band band : Band.KNOWN) {
            Passband passband = band.passband();
            int n = 2000;
            double sum = 0;
            for (int i = 0; i < n; i++) {
                sum += dispersion.shiftArcsec(
                        passband.fromNm() + (i + 0.5) / n * (passband.toNm() - passband.fromNm()));
            }
            assertEquals(sum / n, dispersion.shiftArcsec(passband, Spectrum.EVEN), 0.003, band.name());
        }
    }

    @Test
    void blueStandsHigherThanRedAndIsSmearedMore() {
        Dispersion dispersion = new Dispersion(540, 30, Air.standardAt(480));
        assertTrue(dispersion.shiftArcsec(Band.B.passband(), Spectrum.EVEN)
                > dispersion.shiftArcsec(Band.G.passband(), Spectrum.EVEN));
        assertTrue(dispersion.shiftArcsec(Band.G.passband(), Spectrum.EVEN)
                > dispersion.shiftArcsec(Band.R.passband(), Spectrum.EVEN));
        assertTrue(dispersion.smearArcsec(Band.B.passband()) > dispersion.smearArcsec(Band.R.passband()));
        assertEquals(0, dispersion.shiftArcsec(540), 0);
    }

    @Test
    void vanishesAtTheZenith() {
        assertEquals(0, new Dispersion(540, 90, Air.standardAt(0)).smearArcsec(Band.L.passband()), 1e-9);
    }
}
