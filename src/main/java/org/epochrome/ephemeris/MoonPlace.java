package org.epochrome.ephemeris;

/**
 * Where a moon stands as seen from the Earth. Places count from the planet's centre on the planet's own sky axes, in units of
 * its equatorial radius as it appears: light time and perspective are in them.
 *
 * @param moon which moon
 * @param side at right angles to the projected pole, towards growing east longitude: for Jupiter positive on the sky's
 *     west
 * @param pole along the projected north pole, north positive
 * @param depth towards the observer, equatorial radii: positive in front of the plane of the sky through the planet
 * @param inFront whether its centre stands before the planet's disk
 * @param hidden whether its centre stands behind the planet's disk
 * @param eclipsed whether the planet keeps the Sun's centre from its centre
 * @param diameterArcsec apparent
 * @param fromSun where the planet's shadow and the moon meet; what the moon's own shadow hits
 */
public record MoonPlace(
        GalileanMoon moon,
        double side,
        double pole,
        double depth,
        boolean inFront,
        boolean hidden,
        boolean eclipsed,
        double diameterArcsec,
        SunView fromSun) {

    /**
     * Where a moon stands as seen from the Sun's centre, on the axes of the planet as seen from there, in its equatorial radii. On the
     * far side the moon is seen as it stands at its own light's departure, so that it is eclipsed where it is covered; on the
     * near side as it stood when the light passed it that shows the shadow on the planet.
     *
     * @param side at right angles to the projected pole, towards growing east longitude
     * @param pole along the projected north pole
     * @param depth towards the Sun
     */
    public record SunView(double side, double pole, double depth) {}
}
