package org.epochrome.ephemeris;

/**
 * A place on the Earth.
 *
 * @param latitudeDeg geodetic, north positive, -90 to 90
 * @param longitudeDeg east positive, -180 to 360
 * @param heightM above the ellipsoid (sea level will do), metres
 */
public record Site(double latitudeDeg, double longitudeDeg, double heightM) {
    public Site {
        if (!(Math.abs(latitudeDeg) <= 90)) {
            throw new IllegalArgumentException(
                    "A latitude must be between -90 and 90 degrees, not " + latitudeDeg + ".");
        }
        if (!(longitudeDeg >= -180 && longitudeDeg <= 360)) {
            throw new IllegalArgumentException(
                    "A longitude must be between -180 and 360 degrees, east positive, not " + longitudeDeg + ".");
        }
        if (!(heightM >= -500 && heightM <= 10000)) {
            throw new IllegalArgumentException(
                    "The height of a site must be between -500 and 10000 m, not " + heightM + ".");
        }
    }
}
