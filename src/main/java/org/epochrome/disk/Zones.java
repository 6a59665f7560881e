package org.epochrome.disk;

import java.util.Arrays;

/**
 * The mean brightness of a belted globe by latitude, as the inner part of its disk shows it: what the markings at the
 * limb are expected to be.
 */
final class Zones {
    private static final int PER_DEGREE = 2;
    private static final int COUNT = 180 * PER_DEGREE + 1;
    /** Distance from the limb in blurs, and least cosine of emission, from which on a pixel tells its latitude's brightness. */
    private static final double CLEAR_BLURS = 2.5;

    private static final double LEAST_EMISSION = 0.2;
    private static final double LEAST_LIGHT = 0.02;

    private final double[] logarithms;

    private Zones(double[] logarithms) {
        this.logarithms = logarithms;
    }

    /** The zones that samples show where their disk is as a model has it. */
    static Zones of(DiskModel model, Samples samples) {
        View view = new View(model.globe(), model.disk());
        double[] shape = model.shape();
        double most = 1 - (CLEAR_BLURS * shape[DiskModel.BLUR] + model.smearReach()) / shape[DiskModel.RADIUS];
        double[] sums = new double[COUNT];
        double[] weights = new double[COUNT];
        double[] law = new double[3];
        for (int y = 0; y < samples.data().height(); y++) {
            for (int x = 0; x < samples.data().width(); x++) {
                double pole = view.pole(x, y);
                double side = view.side(x, y);
                double light = model.light(y * samples.data().width() + x);
                if (!(light > LEAST_LIGHT)
                        || view.ellipticRadius(pole, side) > most
                        || !Shading.law(
                                view, pole, side, shape[DiskModel.MINNAERT], shape[DiskModel.BRIGHTENING], law)) {
                    continue;
                }
                double depth = view.depth(pole, side);
                double bodyX = view.bodyX(pole, depth);
                double bodyZ = view.bodyZ(pole, depth);
                double emission = view.cosEmission(bodyX, side, bodyZ);
                if (emission > LEAST_EMISSION && light > LEAST_LIGHT * law[0]) {
                    double at = place(view.graphicLatitude(bodyX, side, bodyZ));
                    int below = (int) at;
                    double weight = emission * emission;
                    double value = weight * Math.log(light / law[0]);
                    double above = at - below;
                    sums[below] += (1 - above) * value;
                    weights[below] += (1 - above) * weight;
                    sums[below + 1] += above * value;
                    weights[below + 1] += above * weight;
                }
            }
        }
        return new Zones(filled(sums, weights));
    }

    private static double place(double latitude) {
        double at = (Math.toDegrees(latitude) + 90) * PER_DEGREE;
        return Math.max(0, Math.min(COUNT - 1 - 1e-9, at));
    }

    /** Means; latitudes that are not seen are like the nearest that is. */
    private static double[] filled(double[] sums, double[] weights) {
        int[] seen = java.util.stream.IntStream.range(0, COUNT)
                .filter(i -> weights[i] > 0)
                .toArray();
        double[] means = new double[COUNT];
        for (int i = 0; i < COUNT && seen.length > 0; i++) {
            int found = Arrays.binarySearch(seen, i);
            int after = found >= 0 ? found : -found - 1;
            int nearest =
                    after == seen.length || (after > 0 && i - seen[after - 1] < seen[after] - i) ? after - 1 : after;
            means[i] = sums[seen[nearest]] / weights[seen[nearest]];
        }
        return means;
    }

    /** Logarithm of the brightness factor at a planetographic latitude, radians. */
    double at(double latitude) {
        double at = place(latitude);
        int below = (int) at;
        return logarithms[below] + (at - below) * (logarithms[below + 1] - logarithms[below]);
    }
}
