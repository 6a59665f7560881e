package org.epochrome.ephemeris;

import org.epochrome.text.Message;

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
            throw new IllegalArgumentException(Message.text("value.latitude", latitudeDeg));
        }
        if (!(longitudeDeg >= -180 && longitudeDeg <= 360)) {
            throw new IllegalArgumentException(Message.text("value.longitude", longitudeDeg));
        }
        if (!(heightM >= -500 && heightM <= 10000)) {
            throw new IllegalArgumentException(Message.text("value.height", heightM));
        }
    }
}
