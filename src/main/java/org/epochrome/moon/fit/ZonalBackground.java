package org.epochrome.moon.fit;

import java.util.Arrays;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;

/**
 * The zones of a belted globe, as a ground for moons: at each latitude the median of how much brighter than an even globe the
 * frame is. A moon covers too little of a zone to move its median.
 */
final class ZonalBackground {
    private static final double LEAST_LIGHT = 0.25;
    private static final double RIM = 0.93;
    /** Zones are about a pixel wide at the middle of the disk. */
    private static final double ZONES_PER_RADIUS = 3;

    private static final int LEAST_PIXELS = 12;

    private ZonalBackground() {}

    /** Brings an even globe's light to that of the frame's zones. */
    static void lay(Plane even, Plane light, View view) {
        int zones = (int) Math.max(20, ZONES_PER_RADIUS * view.disk().equatorialRadiusPx());
        double[] latitude = new double[even.data().length];
        float[][] samples = new float[zones][16];
        int[] counts = new int[zones];
        for (int y = 0; y < even.height(); y++) {
            for (int x = 0; x < even.width(); x++) {
                double pole = view.pole(x, y);
                double side = view.side(x, y);
                double depth = view.depth(pole, side);
                int i = y * even.width() + x;
                latitude[i] = Double.isNaN(depth)
                        ? Double.NaN
                        : place(view.graphicLatitude(view.bodyX(pole, depth), side, view.bodyZ(pole, depth)), zones);
                float value = light.data()[i] / even.data()[i];
                if (even.data()[i] > LEAST_LIGHT
                        && !Float.isNaN(value)
                        && !Double.isNaN(latitude[i])
                        && view.ellipticRadius(pole, side) < RIM) {
                    int zone = (int) Math.round(latitude[i]);
                    if (counts[zone] == samples[zone].length) {
                        samples[zone] = Arrays.copyOf(samples[zone], 2 * counts[zone]);
                    }
                    samples[zone][counts[zone]++] = value;
                }
            }
        }
        double[] profile = profile(samples, counts);
        for (int i = 0; i < latitude.length; i++) {
            if (!Double.isNaN(latitude[i])) {
                int below = (int) Math.min(zones - 2, latitude[i]);
                double part = latitude[i] - below;
                even.data()[i] *= (float) ((1 - part) * profile[below] + part * profile[below + 1]);
            }
        }
    }

    private static double place(double latitudeRad, int zones) {
        return Math.max(0, Math.min(zones - 1, (latitudeRad / Math.PI + 0.5) * (zones - 1)));
    }

    /** Medians; zones that hardly anything of is seen are as their neighbour towards the equator. */
    private static double[] profile(float[][] samples, int[] counts) {
        double[] profile = new double[counts.length];
        int middle = counts.length / 2;
        for (int step = -1; step <= 1; step += 2) {
            double last = 1;
            for (int zone = middle; zone >= 0 && zone < counts.length; zone += step) {
                if (counts[zone] >= LEAST_PIXELS) {
                    Arrays.sort(samples[zone], 0, counts[zone]);
                    last = samples[zone][counts[zone] / 2];
                }
                profile[zone] = last;
            }
        }
        return profile;
    }
}
