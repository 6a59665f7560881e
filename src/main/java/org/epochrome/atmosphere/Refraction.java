package org.epochrome.atmosphere;

/**
 * How much the air lifts a body: the expansion to tan^3 of Stone 1996 (PASP 108, 1051, eqs. 4 and 5) with the scale height
 * of the air, over {@link Refractivity}. Against rays traced through a model atmosphere, in ordinary weather: 0.01 arcsec
 * from 30 degrees of altitude up, 0.2 at 15, 1.2 at 10, 18 at 5; between two colours from 400 to 890 nm 0.002 arcsec from 15
 * degrees up, 0.015 at 10, 0.25 at 5. Not defined below 5 degrees, where the expansion breaks down.
 */
public final class Refraction {
    /** True altitude in degrees below which the expansion is not used. */
    public static final double LOWEST_ALTITUDE_DEG = 5;

    /** Scale height of air at 0 C over the Earth's radius (Stone 1996). */
    private static final double SCALE_HEIGHT_AT_0_C = 0.001254;

    private static final double ARCSEC_PER_RAD = Math.toDegrees(3600);
    private static final double CONVERGED_RAD = 1e-12;

    private Refraction() {}

    /**
     * True zenith distance less apparent one, arcsec.
     *
     * @param wavelengthNm in vacuum
     * @param trueAltitudeDeg airless altitude, 5 to 90
     */
    public static double arcsec(double wavelengthNm, double trueAltitudeDeg, Air air) {
        return Expansion.of(wavelengthNm, air).refraction(trueZenithRad(trueAltitudeDeg)) * ARCSEC_PER_RAD;
    }

    /**
     * By what part refraction shortens small vertical distances on the sky, because it lifts the lower end more: the derivative
     * of {@link #arcsec} by the true zenith distance, 0.0005 at 46 degrees of altitude, 0.004 at 15.
     *
     * @param wavelengthNm in vacuum
     * @param trueAltitudeDeg airless altitude, 5 to 90
     */
    public static double verticalShortening(double wavelengthNm, double trueAltitudeDeg, Air air) {
        double trueZenith = trueZenithRad(trueAltitudeDeg);
        Expansion expansion = Expansion.of(wavelengthNm, air);
        double slope = expansion.slope(trueZenith - expansion.refraction(trueZenith));
        return slope / (1 + slope);
    }

    private static double trueZenithRad(double trueAltitudeDeg) {
        if (!(trueAltitudeDeg >= LOWEST_ALTITUDE_DEG && trueAltitudeDeg <= 90)) {
            throw new IllegalArgumentException("Refraction is modelled from " + LOWEST_ALTITUDE_DEG
                    + " degrees of altitude up, not at " + trueAltitudeDeg + " degrees.");
        }
        return Math.toRadians(90 - trueAltitudeDeg);
    }

    /** Refraction by the tangent of the apparent zenith distance and its cube; angles in radians. */
    private record Expansion(double first, double third) {
        static Expansion of(double wavelengthNm, Air air) {
            double n = Refractivity.ciddor(wavelengthNm, air);
            double beta = SCALE_HEIGHT_AT_0_C * air.temperatureK() / 273.15;
            return new Expansion(n * (1 - beta), n * (beta - n / 2));
        }

        /** Finds the apparent zenith distance on the way: a fixed point that gains 3 digits a round. */
        double refraction(double trueZenith) {
            double refraction = 0;
            double before;
            do {
                before = refraction;
                double tan = Math.tan(trueZenith - refraction);
                refraction = first * tan - third * tan * tan * tan;
            } while (Math.abs(refraction - before) > CONVERGED_RAD);
            return refraction;
        }

        /** Derivative of the refraction by the apparent zenith distance. */
        double slope(double apparentZenith) {
            double tan = Math.tan(apparentZenith);
            return (first - 3 * third * tan * tan) * (1 + tan * tan);
        }
    }
}
