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
    /**
     * Photon-weighted means of astropy 5.2.1's BlackBody(5772 K), sums over 20001 wavelengths. The Sun differs from it: the lines below
     * 430 nm take up to 15 % of its light away, and its continuum is that of 5900 K about 500 nm.
     */
    @ParameterizedTest
    @CsvSource({
        "400, 500, 452.9093",
        "500, 580, 540.6622",
        "600, 690, 644.9528",
        "400, 690, 554.3105",
        "750, 950, 846.5248"
    })
    void sunlightIsNearABlackBody(double from, double to, double expectedNm) {
        assertEquals(expectedNm, Spectrum.SUNLIGHT.effectiveNm(new Passband(from, to)), 1.5);
    }

    /**
     * ASTM G173-03, extraterrestrial, every tenth nanometre's mean from the rows 400 to 499, in W / m^2 / nm, read in a public copy of
     * the table apart from that of the code: 400-409 ... 490-499.
     */
    @Test
    void sunlightAgreesWithThePublishedTable() {
        double[] tens = {1.7277, 1.7255, 1.6887, 1.5916, 1.8612, 2.0238, 2.0202, 2.0052, 1.9518, 1.9581};
        double photons = 0;
        double sum = 0;
        for (int i = 0; i < tens.length; i++) {
            double nm = 404.5 + 10 * i;
            photons += nm * tens[i];
            sum += nm * nm * tens[i];
        }
        // bins that lie half a bin askew, and a step from 394 to 405 nm: 0.5 nm
        assertEquals(sum / photons, Spectrum.SUNLIGHT.effectiveNm(new Passband(399.5, 499.5)), 0.5);
    }

    /** Each step shifts blue light to longer waves: a camera's response, a reddish planet, the air. */
    @Test
    void planetAirAndCameraMoveBlue() {
        Passband blue = new Passband(400, 500);
        Air air = new Air(1013.25, 10, 0.4);
        double camera = Spectrum.CAMERA.from(nm -> 1, nm -> 1).effectiveNm(blue);
        double red = Spectrum.CAMERA.from(nm -> nm, nm -> 1).effectiveNm(blue);
        double low = Spectrum.CAMERA
                .from(nm -> nm, nm -> Extinction.transmission(nm, 2.5, air))
                .effectiveNm(blue);
        assertTrue(camera > Spectrum.SUNLIGHT.effectiveNm(blue) + 1, "camera " + camera);
        assertTrue(red > camera + 1, "red " + red);
        assertTrue(low > red + 2, "low " + low);
        assertEquals(450, Spectrum.EVEN.from(nm -> nm, nm -> nm).effectiveNm(blue), 0);
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
        assertEquals(Spectrum.SUNLIGHT.effectiveNm(new Passband(450, 500)), cut.effectiveNm(blue), 3e-4);
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

    /** The mean of an exponential over an interval is Langevin's function (Langevin 1905, J. Phys. 4, 678). */
    @ParameterizedTest
    @CsvSource({"0.6", "-0.9", "2"})
    void aTiltedSpectrumHasItsMeanByLangevin(double tilt) {
        Passband blue = new Passband(400, 500);
        double expected = 450 + 50 * (1 / Math.tanh(tilt) - 1 / tilt);
        // 256 steps of 0.4 nm, each taken as even.
        assertEquals(expected, Spectrum.EVEN.tilted(blue, tilt).effectiveNm(blue), 6e-4);
    }
}
