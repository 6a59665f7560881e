package org.epochrome.disk.model;

import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.disk.ZonalDarkening;
import org.epochrome.image.Plane;

/** The belts of a globe as the inner part of its disk shows them: what the markings at the limb are expected to be. */
final class Zones {
    /** Distance from the limb in blurs, and least cosine of emission, from which on a pixel tells its latitude's brightness. */
    private static final double CLEAR_BLURS = 2.5;

    private static final double LEAST_EMISSION = 0.2;
    private static final double LEAST_LIGHT = 0.02;

    private Zones() {}

    /**
     * The belts that samples show where their disk is as a model has it.
     *
     * @param even {@link DiskModel#even}
     */
    static ZonalDarkening of(DiskModel model, Samples samples, Plane even) {
        View view = model.view();
        double[] shape = model.shape();
        double most = 1 - (CLEAR_BLURS * shape[Unknowns.BLUR] + model.smearReach()) / shape[Unknowns.RADIUS];
        ZonalDarkening.Sums sums = new ZonalDarkening.Sums();
        double[] law = new double[4];
        for (int y = 0; y < samples.data().height(); y++) {
            for (int x = 0; x < samples.data().width(); x++) {
                double pole = view.pole(x, y);
                double side = view.side(x, y);
                double light = model.light(y * samples.data().width() + x);
                if (!(light > LEAST_LIGHT)
                        || view.ellipticRadius(pole, side) > most
                        || !Shading.law(view, pole, side, shape[Unknowns.MINNAERT], shape[Unknowns.BRIGHTENING], law)) {
                    continue;
                }
                double depth = view.depth(pole, side);
                double bodyX = view.bodyX(pole, depth);
                double bodyZ = view.bodyZ(pole, depth);
                double emission = view.cosEmission(bodyX, side, bodyZ);
                if (emission > LEAST_EMISSION && light > LEAST_LIGHT * even.at(x, y)) {
                    sums.add(
                            view.graphicLatitude(bodyX, side, bodyZ),
                            emission * emission,
                            law[1] / law[0],
                            Math.log(light / even.at(x, y)));
                }
            }
        }
        return sums.darkening(shape[Unknowns.RADIUS]);
    }
}
