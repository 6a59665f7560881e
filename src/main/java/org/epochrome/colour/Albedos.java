package org.epochrome.colour;

import org.epochrome.ephemeris.Body;

/**
 * How much of the sunlight the whole disk of a planet throws back at full phase, by wavelength: geometric albedos in the
 * bands of Johnson and Cousins and of Sloan that lie in visible light, straight lines in between.
 *
 * <p>Mallama, Krobusek & Pavlov 2017 (Icarus 282, 19, table 7; Saturn is the globe without its rings). Effective
 * wavelengths, rounded: U, B, V, Rc, Ic of Bessell 2005 (Annu. Rev. Astron. Astrophys. 43, 293: 366.3, 436.1, 544.8,
 * 640.7, 798.0 nm), R of Johnson 1966 (Annu. Rev. Astron. Astrophys. 4, 193: 700 nm), g' and r' of the Sloan survey (477.0,
 * 623.1 nm; Fukugita et al. 1996, AJ 111, 1748), all read in public copies of these tables.
 */
public final class Albedos {
    private static final double[] NM = {366, 436, 477, 545, 623, 641, 700, 798};

    private Albedos() {}

    /** Geometric albedo at a wavelength, in nanometres; beyond U and Ic that of the last band. */
    public static double at(Body body, double nm) {
        double[] albedo = bands(body);
        int i = 1;
        while (i < NM.length - 1 && nm > NM[i]) {
            i++;
        }
        double part = Math.max(0, Math.min(1, (nm - NM[i - 1]) / (NM[i] - NM[i - 1])));
        return albedo[i - 1] + part * (albedo[i] - albedo[i - 1]);
    }

    /** Albedos in U, B, g', V, r', Rc, R and Ic. */
    private static double[] bands(Body body) {
        return switch (body) {
            case MERCURY -> new double[] {0.087, 0.105, 0.130, 0.142, 0.169, 0.158, 0.172, 0.180};
            case VENUS -> new double[] {0.348, 0.658, 0.664, 0.689, 0.712, 0.658, 0.708, 0.640};
            case MARS -> new double[] {0.060, 0.088, 0.111, 0.170, 0.245, 0.250, 0.288, 0.285};
            case JUPITER -> new double[] {0.358, 0.443, 0.509, 0.538, 0.575, 0.513, 0.495, 0.389};
            case SATURN -> new double[] {0.203, 0.339, 0.436, 0.499, 0.618, 0.646, 0.568, 0.543};
            case URANUS -> new double[] {0.502, 0.561, 0.559, 0.488, 0.355, 0.264, 0.202, 0.089};
            case NEPTUNE -> new double[] {0.578, 0.562, 0.533, 0.442, 0.307, 0.226, 0.181, 0.072};
        };
    }
}
