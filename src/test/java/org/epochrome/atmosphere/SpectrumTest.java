package org.epochrome.atmosphere;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.epochrome.atmosphere.Spectrum.Point;
import org.epochrome.image.Passband;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpectrumTest {
    /** Photon-weighted means of astropy 5.2.1's BlackBody(5772 K), sums over 20001 wavelengths. */
    @ParameterizedTest
    @CsvSource({
        "400, 500, 452.9093",
        "500, 580, 540.6622",
        "600, 690, 644.9528",
        "400, 690, 554.3105",
        "750, 950, 846.5248"
    })
    void sunlightAgreesWithAnIndependentBlackBody(double from, double to, double expectedNm) {
        assertEquals(expectedNm, Spectrum.SUNLIGHT.effectiveNm(new Passband(from, to)), 0.01);
    }

    @Test
    void evenLightHasItsMeanInTheMiddle() {
        assertEquals(450, Spectrum.EVEN.effectiveNm(new Passband(400, 500)), 0);
        assertArrayEquals(
                new double[] {412.5, 437.5, 462.5, 487.5}, Spectrum.EVEN.samplesNm(new Passband(400, 500), 4));
    }

    /** A camera that sees nothing below 450 nm makes the passband begin there. */
    @Test
    void aBlindCameraCutsThePassband() {
        Spectrum cut = Spectrum.seenBy(List.of(new Point(449.999, 0), new Point(450.001, 1)));
        Passband blue = new Passband(400, 500);
        assertEquals(
                Spectrum.SUNLIGHT.effectiveNm(new Passband(450, 500)), cut.effectiveNm(blue), 0.2); // a step of 0.4 nm
        assertTrue(Arrays.stream(cut.samplesNm(blue, 11)).allMatch(nm -> nm > 449.5));
    }

    @Test
    void samplesStandForEqualLight() {
        Passband wide = new Passband(400, 690);
        double[] few = Spectrum.SUNLIGHT.samplesNm(wide, 11);
        assertEquals(
                Spectrum.SUNLIGHT.effectiveNm(wide),
                Arrays.stream(few).average().orElseThrow(),
                0.1);
        for (int i = 1; i < few.length; i++) {
            assertTrue(few[i] > few[i - 1]);
        }
        // photons of the Sun grow towards 600 nm, so the parts get narrower there
        assertTrue(few[1] - few[0] > few[6] - few[5]);
    }

    @Test
    void levelDoesNotMatter() {
        Passband blue = new Passband(400, 500);
        Spectrum one = Spectrum.seenBy(List.of(new Point(350, 0.2), new Point(550, 0.8)));
        Spectrum percent = Spectrum.seenBy(List.of(new Point(350, 20), new Point(550, 80)));
        assertArrayEquals(one.samplesNm(blue, 11), percent.samplesNm(blue, 11), 1e-9);
        assertTrue(one.effectiveNm(blue) > Spectrum.SUNLIGHT.effectiveNm(blue));
    }

    @Test
    void refusesWhatIsNoCurve() {
        assertThrows(IllegalArgumentException.class, () -> Spectrum.seenBy(List.of(new Point(400, 1))));
        assertThrows(
                IllegalArgumentException.class, () -> Spectrum.seenBy(List.of(new Point(500, 1), new Point(400, 1))));
        assertThrows(
                IllegalArgumentException.class, () -> Spectrum.seenBy(List.of(new Point(400, -1), new Point(500, 1))));
        assertThrows(
                IllegalArgumentException.class, () -> Spectrum.seenBy(List.of(new Point(400, 0), new Point(500, 0))));
    }
}
