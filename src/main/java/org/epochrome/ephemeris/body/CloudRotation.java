package org.epochrome.ephemeris.body;

/**
 * How the cloud tops of a planet turn, in the sense of the globe but at their own pace, where a band shows them.
 *
 * @param band name of the band
 * @param windMs at the equator
 * @param heightKm of the cloud tops over the equatorial radius
 * @param source what to cite
 */
public record CloudRotation(String band, double windMs, double heightKm, String source) {
    private static final double DAY_S = 86400;

    static CloudRotation of(FactsFile file) {
        return new CloudRotation(
                file.text("clouds.band"),
                file.positive("clouds.windMs"),
                file.positive("clouds.heightKm"),
                file.text("clouds.source"));
    }

    /** Sidereal period of the cloud tops at the equator, days. */
    public double periodDays(double equatorialRadiusKm) {
        return 2 * Math.PI * 1000 * (equatorialRadiusKm + heightKm) / windMs / DAY_S;
    }
}
