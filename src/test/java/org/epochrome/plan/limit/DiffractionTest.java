package org.epochrome.plan.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DiffractionTest {
    /** Born and Wolf, Principles of Optics, table 8.2: the first dark ring at 1.220 wavelengths over aperture. */
    @Test
    void theOpenApertureIsTheAiryPattern() {
        Diffraction open = new Diffraction(0);
        assertEquals(1, open.brightness(0), 1e-12);
        assertEquals(0, open.brightness(1.2197), 1e-7);
        // the second bright ring of the same table: 0.0175 at 1.635
        assertEquals(0.0175, open.brightness(1.635), 0.0001);
        // half of the brightness at x = 1.6163: 2 x 1.6163 / pi
        assertEquals(1.0290, open.fwhm(), 0.0001);
    }

    /** First dark ring of annular apertures: Schroeder, Astronomical Optics, table 10.1 (from memory), three digits. */
    @ParameterizedTest
    @CsvSource({"0.1, 1.205", "0.2, 1.167", "0.33, 1.098", "0.4, 1.058", "0.5, 1.000"})
    void obstructionsDrawTheFirstDarkRingIn(double obstruction, double ring) {
        Diffraction annulus = new Diffraction(obstruction);
        double darkest = 0.5;
        for (double at = 0.5; at < 1.3; at += 0.0005) {
            darkest = annulus.brightness(at) < annulus.brightness(darkest) ? at : darkest;
        }
        assertEquals(ring, darkest, 0.002);
    }

    /** Against the integral over the aperture, with cosines in place of Bessel functions. */
    @ParameterizedTest
    @CsvSource({"0, 0.4", "0.2, 0.6", "0.34, 0.5", "0.34, 1.6", "0.5, 0.9", "0.9, 0.3"})
    void theBrightnessIsTheIntegralOverTheAperture(double obstruction, double distance) {
        int rings = 800;
        int angles = 360;
        double sum = 0;
        double area = 0;
        for (int i = 0; i < rings; i++) {
            double r = obstruction + (i + 0.5) / rings * (1 - obstruction);
            for (int k = 0; k < angles; k++) {
                double x = r * Math.cos(2 * Math.PI * (k + 0.5) / angles);
                sum += r * Math.cos(Math.PI * distance * x);
                area += r;
            }
        }
        assertEquals(Math.pow(sum / area, 2), new Diffraction(obstruction).brightness(distance), 1e-5);
    }

    @Test
    void halfOfTheBrightnessIsAtHalfTheWidth() {
        double before = 2;
        for (double obstruction : new double[] {0, 0.2, 0.34, 0.5, 0.9}) {
            Diffraction d = new Diffraction(obstruction);
            assertEquals(0.5, d.brightness(d.fwhm() / 2), 1e-9);
            assertTrue(d.fwhm() < before, "an obstruction narrows the middle");
            before = d.fwhm();
        }
    }
}
