package org.epochrome.plan.night;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/** The Moon's size and phase. */
final class MoonLight {
    /** IAU WGCCRE 2015 (Archinal et al. 2018), table 4. */
    private static final double RADIUS_KM = 1737.4;

    private MoonLight() {}

    static double radiusDeg(double distanceKm) {
        return Math.toDegrees(Math.asin(RADIUS_KM / distanceKm));
    }

    /**
     * The lit part of the disk, 0 to 1.
     *
     * @param moonKm from the observer
     * @param sunKm from the observer
     */
    static double illuminatedFraction(Vector3D moonKm, Vector3D sunKm) {
        double phase = Vector3D.angle(moonKm.negate(), sunKm.subtract(moonKm));
        return (1 + Math.cos(phase)) / 2;
    }
}
