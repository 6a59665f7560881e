package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.atmosphere.Air;
import org.epochrome.image.Passband;

/**
 * How far the air lifts light, by other formulas than the engine's: the refractivity of Edlén 1953 as Filippenko 1982 (PASP
 * 94, 715, eqs. 1 and 2) prints it, and a ray traced through air that thins out evenly above a round Earth. The vapour is left out:
 * it moves colours by less than a thousandth of their distance.
 */
final class TracedLight {
    private static final double EARTH_M = 6371e3;
    /** Height over which isothermal air thins out by e, per kelvin: gas constant of dry air over gravity. */
    private static final double THINNING_M_PER_K = 287.05 / 9.80665;

    private static final double HPA_PER_MMHG = 1.333224;
    private static final int LAYERS = 400;
    private static final int ROUNDS = 6;

    private TracedLight() {}

    /** Towards the zenith for equal parts of a passband's light, against the middle of another, arcsec. */
    static List<Double> shiftsArcsec(Passband band, Passband against, int parts, double trueAltitudeDeg, Air air) {
        double base = liftArcsec(against.effectiveNm(), trueAltitudeDeg, air);
        List<Double> shifts = new ArrayList<>();
        for (int i = 0; i < parts; i++) {
            double nm = band.fromNm() + (i + 0.5) / parts * (band.toNm() - band.fromNm());
            shifts.add(liftArcsec(nm, trueAltitudeDeg, air) - base);
        }
        return shifts;
    }

    static double liftArcsec(double nm, double trueAltitudeDeg, Air air) {
        double ground = refractivity(nm, air);
        double height = THINNING_M_PER_K * (air.temperatureC() + 273.15);
        double lift = 0;
        for (int round = 0; round < ROUNDS; round++) {
            double level = (1 + ground) * EARTH_M * Math.cos(Math.toRadians(trueAltitudeDeg) + lift);
            double bend = 0;
            for (int i = 0; i < LAYERS; i++) {
                double density = (i + 0.5) / LAYERS;
                double sine = level / ((1 + ground * density) * (EARTH_M - height * Math.log(density)));
                bend += ground / LAYERS / (1 + ground * density) * sine / Math.sqrt(1 - sine * sine);
            }
            lift = bend;
        }
        return Math.toDegrees(lift) * 3600;
    }

    private static double refractivity(double nm, Air air) {
        double waves = 1e6 / (nm * nm);
        double standard = 64.328 + 29498.1 / (146 - waves) + 255.4 / (41 - waves);
        double t = air.temperatureC();
        double p = air.pressureHpa() / HPA_PER_MMHG;
        return 1e-6 * standard * p * (1 + (1.049 - 0.0157 * t) * 1e-6 * p) / (720.883 * (1 + 0.003661 * t));
    }
}
