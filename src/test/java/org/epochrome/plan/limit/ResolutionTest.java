package org.epochrome.plan.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.epochrome.image.Band;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResolutionTest {
    private static final Telescope OPEN = new Telescope(280, 0, 5600, 2.9);

    /** By hand: 1.029 x 540e-9 / 0.28 x 206265 = 0.4093 arcsec; with 1 arcsec of seeing at 540 nm 1 x 1.08^-0.2 = 0.9847. */
    @Test
    void diffractionAndSeeingAddInSquares() {
        Resolution resolution = new Resolution(OPEN, new Seeing(1));
        assertEquals(0.4093, resolution.diffractionArcsec(540), 0.0002);
        assertEquals(Math.sqrt(0.4093 * 0.4093 + 0.9847 * 0.9847), resolution.arcsec(540, 1), 0.0003);
        assertEquals(0.4093, new Resolution(OPEN, Seeing.NONE).arcsec(540, 2), 0.0002);
    }

    /** Roddier 1981: twice the air gives 2^0.6 = 1.516 times the blur. */
    @Test
    void seeingGrowsWithTheAirMassAndFallsWithTheWavelength() {
        assertEquals(1.516, new Seeing(1).arcsec(500, 2), 0.001);
        assertEquals(1, new Seeing(1).arcsec(500, 1), 1e-12);
        assertEquals(0.871, new Seeing(1).arcsec(1000, 1), 0.001);
    }

    /** Against the mean of a cosine over the smear. */
    @ParameterizedTest
    @CsvSource({"0, 0", "0.25, 0.0255", "0.5, 0.0997", "1, 0.3634"})
    void aSmearTakesContrast(double smear, double loss) {
        int n = 10_000;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double x = ((i + 0.5) / n - 0.5) * smear;
            sum += Math.cos(2 * Math.PI * x / 2);
        }
        assertEquals(1 - sum / n, Resolution.contrastLoss(smear), 1e-6);
        assertEquals(loss, Resolution.contrastLoss(smear), 0.0001);
    }

    /** By hand: 206265 x 0.0029 / 5600 = 0.1068 arcsec per pixel; 2 x 2.9 / 0.45 = 12.89. */
    @Test
    void samplingFollowsFromTheCutOff() {
        Sampling blue = Sampling.of(Band.B, new Resolution(OPEN, new Seeing(1)), 1);
        assertEquals(0.1068, blue.arcsecPerPx(), 0.0001);
        assertEquals(12.89, blue.finestFRatio(), 0.01);
        assertEquals(0.5 * 0.45e-6 / 0.28 * 206265, blue.finestArcsecPerPx(), 1e-4);
        assertEquals(true, blue.finerThanNeeded());
        Telescope coarse = new Telescope(280, 0, 560, 2.9);
        Sampling lost = Sampling.of(Band.B, new Resolution(coarse, new Seeing(1)), 1);
        assertEquals(true, lost.tooCoarse());
        assertEquals(false, lost.finerThanNeeded());
    }

    @Test
    void impossibleTelescopesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Telescope(0, 0, 1000, 3));
        assertThrows(IllegalArgumentException.class, () -> new Telescope(100, 0.95, 1000, 3));
        assertThrows(IllegalArgumentException.class, () -> new Telescope(100, 0, 1, 3));
        assertThrows(IllegalArgumentException.class, () -> new Telescope(100, 0, 1000, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new Seeing(-1));
    }
}
