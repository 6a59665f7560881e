package org.epochrome.disk;

import org.epochrome.atmosphere.Air;
import org.epochrome.atmosphere.Refraction;
import org.epochrome.ephemeris.Aspect;

/**
 * How refraction flattens a small picture of the sky: it shortens the vertical, because it lifts the lower limb more than the
 * upper one (Smart 1977, Textbook on Spherical Astronomy, chapter III). Across the vertical it shortens everything by the
 * refractivity, 0.03 % at any altitude; that is left in the plate scale.
 *
 * @param part by which the vertical is shortened, 0 to 1
 * @param zenithFromPoleDeg position angle of the zenith less that of the body's projected north pole
 */
public record AirFlattening(double part, double zenithFromPoleDeg) {
    /** A picture without air. */
    public static final AirFlattening NONE = new AirFlattening(0, 0);

    /** Green light: from 400 to 700 nm the flattening differs by 1.5 % of itself. */
    private static final double WAVELENGTH_NM = 540;

    /** What the air at a site does to a body; {@link #NONE} without a site and where refraction is not modelled. */
    public static AirFlattening of(Aspect aspect, Air air) {
        return aspect.horizontal()
                .filter(h -> h.altitudeDeg() >= Refraction.LOWEST_ALTITUDE_DEG)
                .map(h -> new AirFlattening(
                        Refraction.verticalShortening(WAVELENGTH_NM, h.altitudeDeg(), air),
                        h.parallacticAngleDeg() - aspect.poleAngleDeg()))
                .orElse(NONE);
    }
}
