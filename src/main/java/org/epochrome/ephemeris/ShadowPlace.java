package org.epochrome.ephemeris;

/**
 * Where a moon's shadow lies on its planet as seen from the Earth: the middle of it, on the axes and in the unit of {@link
 * MoonPlace}. Across the Sun's direction the shadow is round; on the globe it is elongated where the Sun stands low.
 *
 * @param moon whose shadow
 * @param side at right angles to the projected pole, towards growing east longitude
 * @param pole along the projected north pole
 * @param depth height above the plane of the sky through the planet's centre, towards the observer
 * @param umbraRadius of the full shadow, equatorial radii of the planet
 * @param penumbraRadius of the partial one around it
 */
public record ShadowPlace(
        GalileanMoon moon, double side, double pole, double depth, double umbraRadius, double penumbraRadius) {}
