package org.epochrome.plan.night;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.epochrome.ephemeris.Body;

/**
 * From where a planet is seen and from where it is lit. Angles in degrees.
 *
 * @param body the planet
 * @param observerLatitudeDeg planetocentric
 * @param sunLatitudeDeg planetocentric
 * @param sunEastDeg how far east of the central meridian the Sun stands, by longitude on the planet
 */
record Lighting(Body body, double observerLatitudeDeg, double sunLatitudeDeg, double sunEastDeg) {

    /** How far a place lies inside the outline as the observer sees it, in equatorial radii or so; negative outside. */
    double insideSeen(double side, double pole) {
        return 1 - Math.hypot(side, pole / body.projectedAxisRatio(observerLatitudeDeg));
    }

    /** How far a place lies inside the outline as the Sun sees it. */
    double insideLit(double side, double pole) {
        return 1 - Math.hypot(side, pole / body.projectedAxisRatio(sunLatitudeDeg));
    }

    /**
     * Sine, or so, of the observer's altitude above the ground where the Sun sees a place; negative if it is on the far side.
     *
     * @param side on the Sun's sky axes, inside the outline
     * @param pole the same
     */
    double observerAbove(double side, double pole) {
        double ratio = body.axisRatio();
        double latitude = Math.toRadians(sunLatitudeDeg);
        double sin = Math.sin(latitude);
        double cos = Math.cos(latitude);
        // depth d towards the Sun on the spheroid: X = d cos - pole sin, Z = d sin + pole cos, X^2 + side^2 + (Z /
        // ratio)^2 = 1
        double squeezed = 1 / (ratio * ratio);
        double a = cos * cos + squeezed * sin * sin;
        double b = pole * sin * cos * (squeezed - 1);
        double c = pole * pole * (sin * sin + squeezed * cos * cos) + side * side - 1;
        double depth = (-b + Math.sqrt(Math.max(0, b * b - a * c))) / a;
        Vector3D normal =
                new Vector3D(depth * cos - pole * sin, side, squeezed * (depth * sin + pole * cos)).normalize();
        Vector3D observer = new Vector3D(-Math.toRadians(sunEastDeg), Math.toRadians(observerLatitudeDeg));
        return normal.dotProduct(observer);
    }
}
