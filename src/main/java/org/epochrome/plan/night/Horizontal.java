package org.epochrome.plan.night;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * A place in the sky of a site. Angles in degrees.
 *
 * @param altitudeDeg without refraction
 * @param azimuthDeg from north through east, 0 to 360
 * @param parallacticAngleDeg position angle of the zenith from the celestial pole, positive west of the meridian in the
 *     northern hemisphere
 */
record Horizontal(double altitudeDeg, double azimuthDeg, double parallacticAngleDeg) {
    /** Altitude below which no more refraction is added. */
    private static final double LOWEST_REFRACTED_DEG = -1;

    /**
     * From a place on the equator of date.
     *
     * @param equatorial direction, of any length
     * @param siderealTimeDeg at the site
     * @param latitudeDeg geodetic
     */
    static Horizontal of(Vector3D equatorial, double siderealTimeDeg, double latitudeDeg) {
        double hourAngle = Math.toRadians(siderealTimeDeg) - equatorial.getAlpha();
        double declination = equatorial.getDelta();
        double latitude = Math.toRadians(latitudeDeg);
        double sinLatitude = Math.sin(latitude);
        double cosLatitude = Math.cos(latitude);
        double sinDeclination = Math.sin(declination);
        double cosDeclination = Math.cos(declination);
        double sinHour = Math.sin(hourAngle);
        double cosHour = Math.cos(hourAngle);
        double north = sinDeclination * cosLatitude - cosDeclination * sinLatitude * cosHour;
        double east = -cosDeclination * sinHour;
        double up = sinDeclination * sinLatitude + cosDeclination * cosLatitude * cosHour;
        double azimuthDeg = Math.toDegrees(Math.atan2(east, north));
        double parallactic = Math.atan2(
                cosLatitude * sinHour, sinLatitude * cosDeclination - cosLatitude * sinDeclination * cosHour);
        return new Horizontal(
                Math.toDegrees(Math.atan2(up, Math.hypot(north, east))),
                azimuthDeg < 0 ? azimuthDeg + 360 : azimuthDeg,
                Math.toDegrees(parallactic));
    }

    /**
     * With refraction at sea level, 1010 hPa and 10 degrees Celsius: Saemundsson 1986, Sky and Telescope 72, 70, as in Meeus 1998,
     * (16.4); within 0.1 arcmin. An airless altitude of -34.5 arcmin appears at the horizon.
     */
    double apparentAltitudeDeg() {
        double lowest = Math.max(altitudeDeg, LOWEST_REFRACTED_DEG);
        double arcmin = 1.02 / Math.tan(Math.toRadians(lowest + 10.3 / (lowest + 5.11)));
        // the formula is meant to be 0 at the zenith, where it gives -0.002
        return Math.min(90, altitudeDeg + Math.max(0, arcmin) / 60);
    }
}
