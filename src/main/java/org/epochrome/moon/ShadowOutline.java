package org.epochrome.moon;

import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.image.blur.Ellipse;

/**
 * The outline of a shadow as it is seen. It is round across the sunlight; on the surface, taken for the plane that touches the globe
 * below its middle, it is elongated where the Sun is low, and seen foreshortened towards the limb. Off the middle of the
 * disk these two cancel only if the Sun stands behind the observer: at Jupiter's largest phase angle of 12 degrees an axis is off by up
 * to a tenth within 0.6 radii.
 */
final class ShadowOutline {
    /** Cosine of emission from which on the surface is flat enough over a shadow to be taken for a plane. */
    private static final double LEAST_COSINE = 0.3;

    private ShadowOutline() {}

    /** The outline on the pixels of a view; a circle where the shadow does not lie on the disk. */
    static Ellipse at(View view, SkyPoint place) {
        double depth = view.depth(place.pole(), place.side());
        if (Double.isNaN(depth)) {
            return Ellipse.CIRCLE;
        }
        Globe globe = view.globe();
        double x = view.bodyX(place.pole(), depth);
        double z = view.bodyZ(place.pole(), depth) / (globe.axisRatio() * globe.axisRatio());
        double length = Math.sqrt(x * x + place.side() * place.side() + z * z);
        double frontX = view.bodyX(0, 1);
        double frontZ = view.bodyZ(0, 1);
        double poleX = view.bodyX(1, 0);
        double poleZ = view.bodyZ(1, 0);
        double cosine = Math.max(LEAST_COSINE, (x * frontX + z * frontZ) / length);
        // Going one pixel, how far one goes along the surface's plane, on body axes.
        double[][] along = new double[2][];
        for (int k = 0; k < 2; k++) {
            double side = view.side(1 - k, k) - view.side(0, 0);
            double pole = view.pole(1 - k, k) - view.pole(0, 0);
            double slope = (place.side() * side + (x * poleX + z * poleZ) * pole) / length / cosine;
            along[k] = new double[] {pole * poleX - slope * frontX, side, pole * poleZ - slope * frontZ};
        }
        double radius = view.disk().equatorialRadiusPx();
        double unit = radius * radius;
        return new Ellipse(
                unit * acrossLight(globe, along[0], along[0]),
                unit * acrossLight(globe, along[0], along[1]),
                unit * acrossLight(globe, along[1], along[1]));
    }

    /** Product of two vectors as far as they lie across the sunlight. */
    private static double acrossLight(Globe globe, double[] a, double[] b) {
        double lightA = a[0] * globe.sunX() + a[1] * globe.sunY() + a[2] * globe.sunZ();
        double lightB = b[0] * globe.sunX() + b[1] * globe.sunY() + b[2] * globe.sunZ();
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2] - lightA * lightB;
    }
}
