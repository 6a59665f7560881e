package org.epochrome.atmosphere;

/** How much more air the light crosses than from the zenith: Kasten &amp; Young 1989, Appl. Opt. 28, 4735. */
public final class AirMass {
    private AirMass() {}

    /**
     * Relative optical air mass: 1 at the zenith, 38 at the horizon.
     *
     * @param apparentAltitudeDeg with refraction, 0 to 90
     */
    public static double at(double apparentAltitudeDeg) {
        if (!(apparentAltitudeDeg >= 0 && apparentAltitudeDeg <= 90)) {
            throw new IllegalArgumentException(
                    "Air mass is defined for altitudes of 0 to 90 degrees, not " + apparentAltitudeDeg + ".");
        }
        return 1
                / (Math.sin(Math.toRadians(apparentAltitudeDeg))
                        + 0.50572 * Math.pow(apparentAltitudeDeg + 6.07995, -1.6364));
    }
}
