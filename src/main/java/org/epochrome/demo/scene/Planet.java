package org.epochrome.demo.scene;

import java.util.List;

/** A globe, its rings and its moons in front of each other, and in each other's shadow. Moons are not in shadows. */
final class Planet {
    private final View view;
    private final Globe globe;
    private final Rings rings;
    private final Ball[] moons;
    private final Vector awayFromObserver;

    Planet(View view, Globe globe, Rings rings, List<Ball> moons) {
        this.view = view;
        this.globe = globe;
        this.rings = rings;
        this.moons = moons.toArray(Ball[]::new);
        this.awayFromObserver = view.observer().times(-1);
    }

    /**
     * Brightness seen along the ray through a point of the image plane through the body's centre.
     *
     * @param right of the body's centre, equatorial radii
     * @param up of the body's centre, equatorial radii
     */
    double brightness(double right, double up) {
        Vector p = view.right().times(right).plus(view.up().times(up));
        Vector v = p.plus(awayFromObserver).unit();
        double toGlobe = globe.way(p, v);
        double toRings = Rings.way(p.z(), v.z());
        double way = toGlobe;
        Ball moon = null;
        for (Ball ball : moons) {
            double toBall = ball.way(p, v);
            if (toBall < way || (!Double.isNaN(toBall) && Double.isNaN(way))) {
                way = toBall;
                moon = ball;
            }
        }
        double light = 0;
        if (moon != null) {
            light = moon.brightness(p.plus(v.times(way)), v);
        } else if (!Double.isNaN(toGlobe)) {
            Vector hit = p.plus(v.times(toGlobe));
            light = globe.brightness(hit, v) * rings.sunlight(hit.x(), hit.y(), hit.z()) * sunlight(hit);
        }
        if (toRings < Double.POSITIVE_INFINITY && !(toRings > way)) {
            Vector hit = p.plus(v.times(toRings));
            double behind = light > 0 ? light * rings.through(hit.x(), hit.y(), v.z()) : 0;
            light = behind + rings.brightness(hit.x(), hit.y(), v.z()) * sunlight(hit);
        }
        return light;
    }

    private double sunlight(Vector point) {
        double part = 1;
        for (Ball ball : moons) {
            part *= ball.sunlight(point);
        }
        return part;
    }
}
