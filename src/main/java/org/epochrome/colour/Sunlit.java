package org.epochrome.colour;

import java.util.function.DoubleUnaryOperator;
import org.epochrome.ephemeris.Body;

/**
 * Linear sRGB of a sunlit grey or coloured thing, sunlight itself being white: the integral of its albedo, sunlight and
 * the CIE 1931 colour-matching functions, adapted from sunlight to the white of sRGB.
 *
 * <p>Sources: colour matching by the analytic fit of Wyman, Sloan & Shirley 2013 (J. Comput. Graph. Tech. 2(2), 1);
 * sunlight as a black body of 5772 K (nominal value of IAU 2015 resolution B3); adaptation by the Bradford matrix (Lam
 * 1985; ICC.1:2010, annex E); sRGB by IEC 61966-2-1. Coefficients were compared with public copies; tests compare
 * the outcome with the table of CIE 1931.
 */
final class Sunlit {
    private static final double SUN_K = 5772;
    private static final double SECOND_RADIATION_NM_K = 1.438776877e7;
    private static final int FROM_NM = 380;
    private static final int TO_NM = 780;
    private static final int STEP_NM = 5;

    private static final double[][] BRADFORD = {
        {0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296},
    };
    private static final double[][] BRADFORD_INVERSE = {
        {0.9869929, -0.1470543, 0.1599627}, {0.4323053, 0.5183603, 0.0492912}, {-0.0085287, 0.0400428, 0.9684867},
    };
    private static final double[] D65 = {0.95047, 1, 1.08883};

    private Sunlit() {}

    /** Linear red, green and blue of a planet's whole disk, as parts of white. */
    static double[] of(Body body) {
        return of(nm -> body.albedo().at(nm));
    }

    /** Linear red, green and blue of something of that albedo by wavelength in nanometres. */
    static double[] of(DoubleUnaryOperator albedo) {
        double[] seen = times(BRADFORD, xyz(albedo));
        double[] sun = times(BRADFORD, xyz(nm -> 1));
        double[] white = times(BRADFORD, D65);
        for (int i = 0; i < 3; i++) {
            seen[i] *= white[i] / sun[i];
        }
        return Srgb.fromXyz(times(BRADFORD_INVERSE, seen));
    }

    private static double[] xyz(DoubleUnaryOperator albedo) {
        double[] sum = new double[3];
        for (int nm = FROM_NM; nm <= TO_NM; nm += STEP_NM) {
            double light = sunlight(nm) * albedo.applyAsDouble(nm);
            sum[0] += light * x(nm);
            sum[1] += light * y(nm);
            sum[2] += light * z(nm);
        }
        return sum;
    }

    /** Planck's law by wavelength, in any unit. */
    private static double sunlight(double nm) {
        return 1e15 / (Math.pow(nm, 5) * Math.expm1(SECOND_RADIATION_NM_K / (nm * SUN_K)));
    }

    private static double x(double nm) {
        return 1.056 * lobe(nm, 599.8, 0.0264, 0.0323)
                + 0.362 * lobe(nm, 442.0, 0.0624, 0.0374)
                - 0.065 * lobe(nm, 501.1, 0.0490, 0.0382);
    }

    private static double y(double nm) {
        return 0.821 * lobe(nm, 568.8, 0.0213, 0.0247) + 0.286 * lobe(nm, 530.9, 0.0613, 0.0322);
    }

    private static double z(double nm) {
        return 1.217 * lobe(nm, 437.0, 0.0845, 0.0278) + 0.681 * lobe(nm, 459.0, 0.0385, 0.0725);
    }

    private static double lobe(double nm, double middle, double below, double above) {
        double t = (nm - middle) * (nm < middle ? below : above);
        return Math.exp(-0.5 * t * t);
    }

    private static double[] times(double[][] matrix, double[] v) {
        double[] result = new double[3];
        for (int i = 0; i < 3; i++) {
            result[i] = matrix[i][0] * v[0] + matrix[i][1] * v[1] + matrix[i][2] * v[2];
        }
        return result;
    }
}
