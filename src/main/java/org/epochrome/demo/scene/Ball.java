package org.epochrome.demo.scene;

/** A {@link SceneMoon} at an instant, in the body-fixed frame and in units of the planet's equatorial radius. */
final class Ball {
    private final Vector centre;
    private final double radius;
    private final double brightness;
    private final View view;

    Ball(SceneMoon moon, SceneMoon.Place place, View view, String band) {
        Vector front = view.observer().unit();
        Vector abeam = new Vector(0, 0, 1).cross(front).unit();
        Vector pole = front.cross(abeam);
        // nearer than the planet it must be closer to the line of sight to be seen in the same place
        double nearness = 1 - place.front() / Math.sqrt(view.observer().dot(view.observer()));
        this.centre = abeam.times(place.abeam() * nearness)
                .plus(pole.times(place.up() * nearness))
                .plus(front.times(place.front()));
        this.radius = moon.radius();
        this.brightness = moon.brightness(band);
        this.view = view;
    }

    /**
     * The way along a ray to where it first meets the ball, negative before the point; NaN if it passes by.
     *
     * @param p a point of the ray
     * @param v its direction away from the observer, a unit vector
     */
    double way(Vector p, Vector v) {
        Vector there = centre.plus(p.times(-1));
        double along = there.dot(v);
        double inside = radius * radius - (there.dot(there) - along * along);
        return inside > 0 ? along - Math.sqrt(inside) : Double.NaN;
    }

    /**
     * Brightness of a point of the ball seen along a ray, by the law of Lommel and Seeliger (dust that scatters light once; from
     * memory): the full disk is even.
     */
    double brightness(Vector p, Vector v) {
        Vector normal = p.plus(centre.times(-1)).unit();
        double mu0 = normal.dot(view.sun());
        double mu = Math.max(0, -normal.dot(v));
        return mu0 > 0 ? brightness * 2 * mu0 / (mu0 + mu) : 0;
    }

    /** Part of the Sun's disk, taken to be even, that the ball leaves to a point. */
    double sunlight(Vector p) {
        Vector there = centre.plus(p.times(-1));
        double towards = there.dot(view.sun());
        if (!(towards > 0)) {
            return 1;
        }
        double aside = Math.sqrt(Math.max(0, there.dot(there) - towards * towards));
        double sun = towards * view.sunRadius();
        return 1 - overlap(aside, sun, radius) / (Math.PI * sun * sun);
    }

    /** Area that two circles have in common. */
    private static double overlap(double apart, double a, double b) {
        if (apart >= a + b) {
            return 0;
        }
        if (apart <= Math.abs(a - b)) {
            double smaller = Math.min(a, b);
            return Math.PI * smaller * smaller;
        }
        double ofA = (apart * apart + a * a - b * b) / (2 * apart); // from a's centre to the common chord
        double ofB = apart - ofA;
        double halfChord = Math.sqrt(Math.max(0, a * a - ofA * ofA));
        return a * a * StrictMath.atan2(halfChord, ofA) + b * b * StrictMath.atan2(halfChord, ofB) - apart * halfChord;
    }
}
