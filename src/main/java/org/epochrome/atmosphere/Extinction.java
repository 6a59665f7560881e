package org.epochrome.atmosphere;

/**
 * How much light a clear atmosphere lets through: scattering by its molecules and by dust, after Hayes and Latham 1975 (Astrophys. J.
 * 197, 593; coefficients from memory). Ozone and water vapour are left out: within a band they change little.
 */
public final class Extinction {
    /** Magnitudes per air mass at 1 micrometre and 1013.25 hPa, and the power of the wavelength that goes with it. */
    private static final double MOLECULES = 0.0095;

    private static final double MOLECULES_POWER = -4.05;
    private static final double DUST = 0.05;
    private static final double DUST_POWER = -1.3;
    private static final double STANDARD_HPA = 1013.25;

    private Extinction() {}

    /**
     * The part of the light that arrives.
     *
     * @param wavelengthNm 300 to 1100
     * @param airMass 1 at the zenith
     * @param air at the site; only its pressure counts
     */
    public static double transmission(double wavelengthNm, double airMass, Air air) {
        double micrometres = wavelengthNm / 1000;
        double magnitudes = MOLECULES * Math.pow(micrometres, MOLECULES_POWER) * air.pressureHpa() / STANDARD_HPA
                + DUST * Math.pow(micrometres, DUST_POWER);
        return Math.pow(10, -0.4 * magnitudes * airMass);
    }
}
