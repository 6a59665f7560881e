package org.epochrome.ephemeris;

/**
 * How the cloud tops of Venus turn, whose markings show in ultraviolet light: retrograde like the globe, but some 60 times as
 * fast.
 *
 * <p>Sanchez-Lavega et al. 2008 (Geophys. Res. Lett. 35, L13204) tracked clouds with the Venus Express orbiter: 105 m/s at 66 km
 * height, nearly constant from the equator to 55 degrees. That is once around the equator in 4.24 days. It is taken for all
 * latitudes, because features as large as the dark Y keep their shape while they go around (del Genio and Rossow 1990, J. Atmos. Sci.
 * 47, 293, find waves of 4 to 5 days). Winds of single days differ by some 10 m/s, 0.4 days.
 */
public final class VenusClouds {
    /** What to cite. */
    public static final String SOURCE = "Sanchez-Lavega et al. 2008, Geophys. Res. Lett. 35, L13204";

    private static final double WIND_M_S = 105;
    private static final double HEIGHT_KM = 66;
    private static final double DAY_S = 86400;

    private VenusClouds() {}

    /** Sidereal period of the cloud tops at the equator, days. */
    public static double periodDays() {
        return 2 * Math.PI * 1000 * (Body.VENUS.equatorialRadiusKm() + HEIGHT_KM) / WIND_M_S / DAY_S;
    }
}
