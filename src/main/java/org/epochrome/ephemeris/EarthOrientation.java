package org.epochrome.ephemeris;

import java.util.Arrays;
import org.apache.commons.math3.analysis.polynomials.PolynomialFunction;

/**
 * How the Earth's axis and prime meridian stand in ICRS: IAU 2006 precession with frame bias (the four angles of
 * Fukushima and Williams; Hilton et al. 2006, Celest. Mech. Dyn. Astron. 94, 351), {@link Nutation}, and the Earth's rotation
 * by apparent sidereal time, with UT1 taken as UTC (0.9 s, 0.004 degrees at most) and no polar motion (0.5 arcsec).
 *
 * @param eclipticOfDate mean ecliptic and equinox of date: x to the equinox, z to the ecliptic's pole
 * @param trueOfDate true equator and equinox of date: x to the equinox, z to the celestial pole
 * @param apparentSiderealTimeRad Greenwich apparent sidereal time
 */
record EarthOrientation(Axes eclipticOfDate, Axes trueOfDate, double apparentSiderealTimeRad) {
    private static final double ARCSEC = Math.toRadians(1.0 / 3600.0);
    private static final double DAYS_PER_CENTURY = 36525.0;

    // Polynomials in Julian centuries of TT, arcsec (Hilton et al. 2006; Wallace & Capitaine 2006, Astron. Astrophys.
    // 459, 981).
    private static final PolynomialFunction GAMMA_BAR =
            arcsec(-0.052928, 10.556378, 0.4932044, -0.00031238, -0.000002788, 2.6e-8);
    private static final PolynomialFunction PHI_BAR =
            arcsec(84381.412819, -46.811016, 0.0511268, 0.00053289, -0.000000440, -1.76e-8);
    private static final PolynomialFunction PSI_BAR =
            arcsec(-0.041775, 5038.481484, 1.5584175, -0.00018522, -0.000026452, -1.48e-8);
    private static final PolynomialFunction OBLIQUITY =
            arcsec(84381.406, -46.836769, -0.0001831, 0.00200340, -0.000000576, -4.34e-8);
    private static final PolynomialFunction PRECESSION_IN_GMST =
            arcsec(0.014506, 4612.156534, 1.3915817, -0.00000044, -0.000029956, -3.68e-8);

    /** @param ttDays TT, {@code ut1Days} UT1, both in days since J2000.0 */
    static EarthOrientation at(double ttDays, double ut1Days) {
        double t = ttDays / DAYS_PER_CENTURY;
        Nutation nutation = Nutation.at(t);
        double meanObliquity = OBLIQUITY.value(t);
        Axes node = Axes.ICRS.turnedAboutZ(GAMMA_BAR.value(t)).turnedAboutX(PHI_BAR.value(t));
        Axes trueOfDate = node.turnedAboutZ(-PSI_BAR.value(t) - nutation.longitudeRad())
                .turnedAboutX(-meanObliquity - nutation.obliquityRad());
        double equationOfEquinoxes =
                nutation.longitudeRad() * Math.cos(meanObliquity) + nutation.equationOfEquinoxesTermsRad();
        return new EarthOrientation(
                node.turnedAboutZ(-PSI_BAR.value(t)),
                trueOfDate,
                rotationAngle(ut1Days) + PRECESSION_IN_GMST.value(t) + equationOfEquinoxes);
    }

    /** The axes fixed to the Earth: x to Greenwich, z to the celestial pole. */
    Axes earthFixed() {
        return trueOfDate.turnedAboutZ(apparentSiderealTimeRad);
    }

    /** The Earth rotation angle of IAU 2000. */
    private static double rotationAngle(double ut1Days) {
        double turns = ut1Days % 1.0 + 0.7790572732640 + 0.00273781191135448 * ut1Days;
        return 2 * Math.PI * (turns % 1.0);
    }

    private static PolynomialFunction arcsec(double... coefficients) {
        double[] radians = Arrays.stream(coefficients).map(c -> c * ARCSEC).toArray();
        return new PolynomialFunction(radians);
    }
}
