package org.epochrome.turn;

import org.epochrome.disk.View;
import org.epochrome.disk.ZonalDarkening;
import org.epochrome.image.Plane;

/** How the light of a belted globe differs from its shading, by the frame itself: parallel by parallel, and at the limb. */
record LightCalibration(ZonalDarkening zones, LimbProfile limb) {
    /** The factor by which light at a latitude changes between places with some cosines of incidence and emission. */
    double change(double toIncidence, double toEmission, double incidence, double emission, double latitude) {
        double slope = ZonalDarkening.slope(toIncidence, toEmission, incidence, emission);
        return Math.exp(zones.exponent(latitude) * slope + limb.at(toEmission) - limb.at(emission));
    }

    /** How the frame's light differs from its shading, by the clear part of the globe. */
    static LightCalibration of(Plane ratio, RingAttenuation attenuation, View from) {
        ZonalDarkening.Sums sums = new ZonalDarkening.Sums();
        places(
                ratio,
                attenuation,
                from,
                Turner.CLEAR,
                (latitude, incidence, emission, light, value) ->
                        sums.add(latitude, emission, ZonalDarkening.slope(incidence, emission), value));
        ZonalDarkening zones = sums.darkening(from.disk().equatorialRadiusPx());
        LimbProfile.Sums limb = new LimbProfile.Sums();
        places(
                ratio,
                attenuation,
                from,
                0,
                (latitude, incidence, emission, light, value) -> limb.add(
                        emission,
                        light * light,
                        value - zones.logarithm(latitude, ZonalDarkening.slope(incidence, emission))));
        return new LightCalibration(zones, limb.profile());
    }

    /** A place on the globe: cosines of incidence and emission, its shading, and the logarithm of its light against it. */
    @FunctionalInterface
    private interface Place {
        void take(double latitude, double incidence, double emission, double shade, double logarithm);
    }

    private static void places(Plane ratio, RingAttenuation attenuation, View from, double leastEmission, Place each) {
        for (int y = 0; y < ratio.height(); y++) {
            for (int x = 0; x < ratio.width(); x++) {
                double pole = from.pole(x, y);
                double side = from.side(x, y);
                double depth = from.depth(pole, side);
                float value = ratio.at(x, y);
                float shade = attenuation.shade().at(x, y);
                if (Double.isNaN(depth)
                        || !(value > Turner.DARK)
                        || shade < Turner.BRIGHT
                        || attenuation.clear().at(x, y) < Turner.UNDIMMED) {
                    continue;
                }
                double bodyX = from.bodyX(pole, depth);
                double bodyZ = from.bodyZ(pole, depth);
                double emission = from.cosEmission(bodyX, side, bodyZ);
                if (emission > leastEmission) {
                    double incidence = from.cosIncidence(bodyX, side, bodyZ);
                    each.take(from.graphicLatitude(bodyX, side, bodyZ), incidence, emission, shade, Math.log(value));
                }
            }
        }
    }
}
