package org.epochrome.disk.model;

import org.epochrome.disk.Shading;
import org.epochrome.disk.solve.Skyline;

/**
 * What is expected of a limb's law before the limb itself is looked at: the exponent and the brightening of a {@link Shading},
 * and how surely.
 *
 * @param minnaert expected exponent
 * @param brightening expected brightening
 * @param exponents inverse covariance: of the exponent with itself,
 * @param mixed of the exponent with the brightening,
 * @param brightenings and of the brightening with itself
 */
public record LimbLawPrior(double minnaert, double brightening, double exponents, double mixed, double brightenings) {
    /** Usual laws of real disks and their scatter (common practice, no source). */
    public static final LimbLawPrior USUAL = of(0.85, 0.15, 0.15);
    /**
     * The usual law of bodies that show an atmosphere, whose limb may end in a step: deep ones that scatter evenly (Chandrasekhar's functions H in
     * the approximation of Hapke 1981, J. Geophys. Res. 86, 3039), with single scattering albedos from 0.6 to 1, have exponents
     * from 0.57 to 0.7 and brightenings from -2.4 to 0.
     */
    static final LimbLawPrior ATMOSPHERE = of(0.85, 0.2, 0.6);

    private static LimbLawPrior of(double minnaert, double scatter, double brighteningScatter) {
        return new LimbLawPrior(minnaert, 0, 1 / (scatter * scatter), 0, 1 / (brighteningScatter * brighteningScatter));
    }

    /** Adds the expectation to normal equations whose shape parameters begin at an index. */
    public void addTo(Skyline normals, int first, double[] shape) {
        int k = first + Unknowns.MINNAERT;
        int b = first + Unknowns.BRIGHTENING;
        double dk = minnaert - shape[Unknowns.MINNAERT];
        double db = brightening - shape[Unknowns.BRIGHTENING];
        normals.add(k, k, exponents);
        normals.add(b, k, mixed);
        normals.add(b, b, brightenings);
        normals.addRight(k, exponents * dk + mixed * db);
        normals.addRight(b, mixed * dk + brightenings * db);
    }

    /** Twice the negative logarithm of the prior. */
    double misfit(double[] shape) {
        double dk = minnaert - shape[Unknowns.MINNAERT];
        double db = brightening - shape[Unknowns.BRIGHTENING];
        return exponents * dk * dk + 2 * mixed * dk * db + brightenings * db * db;
    }
}
