package org.epochrome.atmosphere;

/**
 * How much the air slows light: n - 1 by Ciddor 1996, "Refractive index of air: new equations for the visible and near
 * infrared", Appl. Opt. 35, 1566, with 450 ppm of carbon dioxide. Phase refractivity; 300 to 1700 nm; good to some 1e-8
 * in ordinary weather.
 */
public final class Refractivity {
    private static final double GAS_CONSTANT = 8.314510;
    private static final double DRY_KG_PER_MOL = 1e-3 * (28.9635 + 12.011e-6 * (450 - 400));
    private static final double WATER_KG_PER_MOL = 0.018015;

    /** Densities under which Ciddor's dispersion formulas hold: 15 C, 1013.25 hPa, dry; 20 C, 13.33 hPa, pure vapour. */
    private static final double STANDARD_DRY_DENSITY =
            density(DRY_KG_PER_MOL, 101325, 288.15, compressibility(101325, 288.15, 0));

    private static final double STANDARD_WATER_DENSITY =
            density(WATER_KG_PER_MOL, 1333, 293.15, compressibility(1333, 293.15, 1));

    private Refractivity() {}

    /**
     * n - 1 of moist air.
     *
     * @param wavelengthNm in vacuum
     */
    public static double ciddor(double wavelengthNm, Air air) {
        double s = Math.pow(1000 / wavelengthNm, 2);
        double dry = 1e-8 * (5792105 / (238.0185 - s) + 167917 / (57.362 - s));
        double water = 1.022e-8 * (295.235 + s * (2.6422 + s * (-0.032380 + s * 0.004028)));

        double p = air.pressurePa();
        double t = air.temperatureK();
        double waterFraction = waterFraction(air);
        double z = compressibility(p, t, waterFraction);
        return density(DRY_KG_PER_MOL, p * (1 - waterFraction), t, z) / STANDARD_DRY_DENSITY * dry
                + density(WATER_KG_PER_MOL, p * waterFraction, t, z) / STANDARD_WATER_DENSITY * water;
    }

    /** Molar fraction of water vapour; over water, also below freezing. */
    private static double waterFraction(Air air) {
        double p = air.pressurePa();
        double t = air.temperatureK();
        double saturation = Math.exp(1.2378847e-5 * t * t - 1.9121316e-2 * t + 33.93711047 - 6.3431645e3 / t);
        double enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * air.temperatureC() * air.temperatureC();
        return enhancement * air.relativeHumidity() * saturation / p;
    }

    /** Of moist air, after the BIPM's density formula of 1981/91 (Davis 1992, Metrologia 29, 67). */
    private static double compressibility(double pressurePa, double temperatureK, double waterFraction) {
        double t = temperatureK - 273.15;
        double ratio = pressurePa / temperatureK;
        return 1
                - ratio
                        * (1.58123e-6
                                - 2.9331e-8 * t
                                + 1.1043e-10 * t * t
                                + (5.707e-6 - 2.051e-8 * t) * waterFraction
                                + (1.9898e-4 - 2.376e-6 * t) * waterFraction * waterFraction)
                + ratio * ratio * (1.83e-11 - 0.765e-8 * waterFraction * waterFraction);
    }

    private static double density(double kgPerMol, double pressurePa, double temperatureK, double compressibility) {
        return pressurePa * kgPerMol / (compressibility * GAS_CONSTANT * temperatureK);
    }
}
