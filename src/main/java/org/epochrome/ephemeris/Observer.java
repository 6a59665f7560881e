package org.epochrome.ephemeris;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * A site carried round by the Earth's rotation, on WGS84; vectors in ICRS.
 *
 * @param positionKm from the Earth's centre
 * @param velocityKmS by the Earth's rotation
 * @param zenith normal of the ellipsoid, unit
 */
record Observer(Vector3D positionKm, Vector3D velocityKmS, Vector3D zenith) {
    private static final double EQUATORIAL_RADIUS_KM = 6378.137;
    private static final double FLATTENING = 1 / 298.257223563;
    private static final double ROTATION_RAD_S = 7.292115e-5;

    static Observer at(Site site, EarthOrientation earth) {
        double latitude = Math.toRadians(site.latitudeDeg());
        double heightKm = site.heightM() / 1000.0;
        double polar = (1 - FLATTENING) * (1 - FLATTENING);
        double sin = Math.sin(latitude);
        double cos = Math.cos(latitude);
        double normalKm = EQUATORIAL_RADIUS_KM / Math.sqrt(cos * cos + polar * sin * sin);

        Axes fixed = earth.earthFixed();
        Axes meridian = fixed.turnedAboutZ(Math.toRadians(site.longitudeDeg()));
        Vector3D position =
                meridian.toIcrs(new Vector3D((normalKm + heightKm) * cos, 0, (normalKm * polar + heightKm) * sin));
        Vector3D velocity = fixed.z().crossProduct(position).scalarMultiply(ROTATION_RAD_S);
        return new Observer(position, velocity, meridian.toIcrs(new Vector3D(cos, 0, sin)));
    }
}
