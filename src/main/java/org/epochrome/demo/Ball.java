package org.epochrome.demo;

import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.Band;

/**
 * A {@link SceneMoon} at an instant, in the body-fixed frame.
 *
 * @param centre equatorial radii
 * @param radius equatorial radii
 * @param brightness even
 * @param sunRadius angular radius of the Sun, radians
 */
record Ball(Vector centre, double radius, double brightness, double sunRadius) {
    private static final double SUN_RADIUS_AU = 0.00465;

    static Ball of(SceneMoon moon, Aspect aspect, View view, Band band) {
        Vector front = view.observer().unit();
        Vector abeam = new Vector(0, 0, 1).cross(front).unit();
        Vector pole = front.cross(abeam);
        SceneMoon.Place place = moon.place().apply(aspect.utc());
        return new Ball(
                abeam.times(place.abeam()).plus(pole.times(place.up())).plus(front.times(place.front())),
                moon.radius(),
                moon.brightness().get(band.name()),
                SUN_RADIUS_AU / aspect.sunDistanceAu());
    }

    /** Whether a line of sight meets it before a depth along the line. */
    boolean hides(double px, double py, double pz, double vx, double vy, double vz, double depth) {
        double x = centre.x() - px;
        double y = centre.y() - py;
        double z = centre.z() - pz;
        double along = x * vx + y * vy + z * vz;
        double aside = x * x + y * y + z * z - along * along;
        return aside < radius * radius && along < depth;
    }

    /** Part of the Sun that it leaves to a point. */
    double sunlight(double x, double y, double z, Vector sun) {
        double dx = centre.x() - x;
        double dy = centre.y() - y;
        double dz = centre.z() - z;
        double towards = dx * sun.x() + dy * sun.y() + dz * sun.z();
        if (towards < 0) {
            return 1;
        }
        double aside = Math.sqrt(Math.max(0, dx * dx + dy * dy + dz * dz - towards * towards));
        double half = towards * sunRadius;
        double t = Math.max(-1, Math.min(1, (aside - radius) / half));
        // the part of the Sun's disk beyond a straight edge
        return 0.5 + (t * Math.sqrt(1 - t * t) + StrictMath.asin(t)) / Math.PI;
    }
}
