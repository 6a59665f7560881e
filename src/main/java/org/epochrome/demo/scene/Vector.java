package org.epochrome.demo.scene;

/** A vector in the body-fixed frame: x to the prime meridian on the equator, z to the IAU north pole. */
record Vector(double x, double y, double z) {

    /** The unit vector towards a planetocentric latitude and an east longitude, degrees. */
    static Vector towards(double latitudeCentricDeg, double eastLongitudeDeg) {
        double latitude = StrictMath.toRadians(latitudeCentricDeg);
        double longitude = StrictMath.toRadians(eastLongitudeDeg);
        double equatorial = StrictMath.cos(latitude);
        return new Vector(
                equatorial * StrictMath.cos(longitude),
                equatorial * StrictMath.sin(longitude),
                StrictMath.sin(latitude));
    }

    Vector times(double factor) {
        return new Vector(factor * x, factor * y, factor * z);
    }

    Vector plus(Vector other) {
        return new Vector(x + other.x, y + other.y, z + other.z);
    }

    double dot(Vector other) {
        return x * other.x + y * other.y + z * other.z;
    }

    Vector cross(Vector other) {
        return new Vector(y * other.z - z * other.y, z * other.x - x * other.z, x * other.y - y * other.x);
    }

    Vector unit() {
        return times(1 / Math.sqrt(dot(this)));
    }
}
