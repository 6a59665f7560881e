package org.epochrome.disk.model;

import org.epochrome.disk.View;

/** Light along the terminator of a globe of clouds that no limb law tells, since its air scatters it. */
final class Twilight {
    /** Its scatter as a part of the disk's brightness, and the cosine of incidence where it begins (common practice, no source). */
    private static final double SCATTER = 0.01;

    private static final double LOW_SUN = 0.15;

    private Twilight() {}

    /** Standard deviation of the light at a place where the Sun stands low and the observer does not, in the disk's brightness. */
    static double scatter(View view, int x, int y) {
        double pole = view.pole(x, y);
        double side = view.side(x, y);
        double depth = view.depth(pole, side);
        if (Double.isNaN(depth)) {
            return 0;
        }
        double bodyX = view.bodyX(pole, depth);
        double bodyZ = view.bodyZ(pole, depth);
        double incidence = Math.max(0, view.cosIncidence(bodyX, side, bodyZ));
        double emission = view.cosEmission(bodyX, side, bodyZ);
        return SCATTER * Math.max(0, 1 - incidence / emission) * Math.max(0, 1 - incidence / LOW_SUN);
    }
}
