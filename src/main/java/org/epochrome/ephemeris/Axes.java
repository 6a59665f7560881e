package org.epochrome.ephemeris;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * A right-handed set of orthogonal unit axes, given in ICRS: a frame of reference.
 *
 * @param x first axis
 * @param y second axis
 * @param z third axis
 */
record Axes(Vector3D x, Vector3D y, Vector3D z) {
    static final Axes ICRS = new Axes(Vector3D.PLUS_I, Vector3D.PLUS_J, Vector3D.PLUS_K);

    /** The frame after a turn about its own x axis, from y towards z. */
    Axes turnedAboutX(double angleRad) {
        double c = Math.cos(angleRad);
        double s = Math.sin(angleRad);
        return new Axes(x, new Vector3D(c, y, s, z), new Vector3D(-s, y, c, z));
    }

    /** The frame after a turn about its own z axis, from x towards y. */
    Axes turnedAboutZ(double angleRad) {
        double c = Math.cos(angleRad);
        double s = Math.sin(angleRad);
        return new Axes(new Vector3D(c, x, s, y), new Vector3D(-s, x, c, y), z);
    }

    /** Components in this frame of a vector given in ICRS. */
    Vector3D componentsOf(Vector3D icrs) {
        return new Vector3D(x.dotProduct(icrs), y.dotProduct(icrs), z.dotProduct(icrs));
    }

    /** In ICRS, the vector of those components in this frame. */
    Vector3D toIcrs(Vector3D components) {
        return new Vector3D(components.getX(), x, components.getY(), y, components.getZ(), z);
    }
}
