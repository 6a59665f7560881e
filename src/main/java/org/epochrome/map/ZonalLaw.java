package org.epochrome.map;

import org.epochrome.disk.View;
import org.epochrome.image.Plane;

/**
 * Corrects Minnaert's exponent on a belted globe: along each parallel the mean brightness without shading must not depend
 * on how steeply a place is lit and seen. The disk fit learns the exponent from the limb alone, where a change of 0.07 does
 * not show; 70 degrees off the middle it makes 15 % of the brightness.
 */
final class ZonalLaw {
    /** Places nearer to limb or terminator than these cosines say more about the blur. */
    private static final double LEAST_COSINE = 0.3;

    private static final int ZONES = 90;
    private static final float CLEAR = 0.97f;
    private static final double MOST = 0.2;

    private ZonalLaw() {}

    /**
     * What the exponent must grow by: the slope of log brightness over log (mu0 mu), zones of latitude apart.
     *
     * @param even brightness without the shading that was fitted
     * @param clear part of the light that rings let through
     */
    static double exponentError(Plane even, Plane clear, View view) {
        double[][] sums = new double[ZONES][5];
        for (int y = 0; y < even.height(); y++) {
            for (int x = 0; x < even.width(); x++) {
                double pole = view.pole(x, y);
                double side = view.side(x, y);
                double depth = view.depth(pole, side);
                float light = even.at(x, y);
                if (Double.isNaN(depth) || !(light > 0) || clear.at(x, y) < CLEAR) {
                    continue;
                }
                double bodyX = view.bodyX(pole, depth);
                double bodyZ = view.bodyZ(pole, depth);
                double emission = view.cosEmission(bodyX, side, bodyZ);
                double incidence = view.cosIncidence(bodyX, side, bodyZ);
                if (emission < LEAST_COSINE || incidence < LEAST_COSINE) {
                    continue;
                }
                double latitude = view.graphicLatitude(bodyX, side, bodyZ);
                double[] zone = sums[(int) Math.min(ZONES - 1, (latitude / Math.PI + 0.5) * ZONES)];
                double law = Math.log(emission * incidence);
                double log = Math.log(light);
                zone[0]++;
                zone[1] += law;
                zone[2] += log;
                zone[3] += law * law;
                zone[4] += law * log;
            }
        }
        double both = 0;
        double square = 0;
        for (double[] zone : sums) {
            if (zone[0] > 0) {
                both += zone[4] - zone[1] * zone[2] / zone[0];
                square += zone[3] - zone[1] * zone[1] / zone[0];
            }
        }
        return square > 0 ? Math.max(-MOST, Math.min(MOST, both / square)) : 0;
    }
}
