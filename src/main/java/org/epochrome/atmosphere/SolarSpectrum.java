package org.epochrome.atmosphere;

import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * Sunlight outside the atmosphere: ASTM G173-03, column of extraterrestrial irradiance (Gueymard 2004, Solar Energy 76, 423), means
 * over 10 nm read in a public copy of the table; those beyond 860 nm from memory. Below 430 nm it lies up to 15 % under a black
 * body, because of the many lines there.
 */
final class SolarSpectrum {
    private static final double[] NM = {
        330, 340, 350, 360, 370, 380, 390, 400, 410, 420, 430, 440, 450, 460, 470, 480, 490, 500, 510, 520, 530, 540,
        550, 560, 580, 600, 620, 640, 660, 680, 700, 750, 800, 850, 900, 1000
    };

    /** W / m^2 / nm. */
    private static final double[] IRRADIANCE = {
        1.00, 0.95, 0.98, 0.98, 1.14, 1.11, 1.06, 1.49, 1.70, 1.74, 1.57, 1.81, 1.99, 2.04, 1.99, 2.05, 1.89, 1.92,
        1.93, 1.82, 1.88, 1.87, 1.87, 1.84, 1.84, 1.77, 1.69, 1.63, 1.51, 1.49, 1.42, 1.28, 1.14, 0.97, 0.90, 0.74
    };

    private static final PolynomialSplineFunction LINE = new LinearInterpolator().interpolate(NM, IRRADIANCE);

    private SolarSpectrum() {}

    /** Photons per nanometre, in any unit; beyond the table's ends as at its ends. */
    static double photons(double nm) {
        return nm * LINE.value(Math.max(NM[0], Math.min(NM[NM.length - 1], nm)));
    }
}
