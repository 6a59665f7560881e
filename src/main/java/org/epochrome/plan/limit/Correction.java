package org.epochrome.plan.limit;

/**
 * What a corrector of atmospheric dispersion has to do: move the shortest waves of the bands towards the horizon against the longest
 * ones.
 *
 * @param arcsec when the planet stands highest
 * @param zenithAngleDeg position angle of the zenith then, from the celestial pole through east, 0 to 360: the line along which it works
 * @param largestArcsec the most in the time that can be used
 */
public record Correction(double arcsec, double zenithAngleDeg, double largestArcsec) {
    /** The position angle in full degrees, 0 to 359. */
    public int zenithAngleRoundedDeg() {
        return (int) Math.floorMod(Math.round(zenithAngleDeg), 360L);
    }
}
