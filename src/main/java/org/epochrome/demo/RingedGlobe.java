package org.epochrome.demo;

/** A globe and its rings in front of each other, and in each other's shadow. */
final class RingedGlobe {
    private final View view;
    private final Globe globe;
    private final Rings rings;

    RingedGlobe(View view, Globe globe, Rings rings) {
        this.view = view;
        this.globe = globe;
        this.rings = rings;
    }

    /**
     * Brightness seen along the ray through a point of the image plane through the body's centre.
     *
     * @param right of the body's centre, equatorial radii
     * @param up of the body's centre, equatorial radii
     */
    double brightness(double right, double up) {
        Vector p = view.right().times(right).plus(view.up().times(up));
        Vector v = p.plus(view.observer().times(-1)).unit();
        double toGlobe = globe.way(p, v);
        double toRings = Rings.way(p.z(), v.z());
        double light = 0;
        if (!Double.isNaN(toGlobe)) {
            Vector hit = p.plus(v.times(toGlobe));
            light = globe.brightness(hit, v) * rings.sunlight(hit.x(), hit.y(), hit.z());
        }
        if (toRings < Double.POSITIVE_INFINITY && !(toRings > toGlobe)) {
            Vector hit = p.plus(v.times(toRings));
            light = light * rings.through(hit.x(), hit.y(), v.z()) + rings.brightness(hit.x(), hit.y(), v.z());
        }
        return light;
    }
}
