package org.epochrome.disk;

/**
 * The markings of a globe as far as a disk fit needs them: a brightness factor that depends on latitude (belts and
 * zones; a constant for a body without), and, towards the limb, a factor that may differ from one side of the disk to
 * the other. It is linear in its coefficients. Detail that it lacks is noise to the fit.
 *
 * <p>The limb terms keep markings near the limb from being taken for a displaced limb: a marking scales the whole edge
 * profile, a displacement scales its slope.
 */
final class Albedo {
    private static final int HARMONICS = 14;
    private static final int LIMB_POWER = 10;
    private static final double LEAST_RADIUS = 0.55;

    private final int zones;
    private final double zoneStep;

    /** @param zonal whether the body has belts along its parallels */
    Albedo(boolean zonal) {
        zones = zonal ? 41 : 1;
        zoneStep = zonal ? Math.PI / (zones - 3) : 0;
    }

    int size() {
        return zones + 2 * HARMONICS;
    }

    int zones() {
        return zones;
    }

    /** Coefficients of an even globe of the given brightness. */
    double[] even(double brightness) {
        double[] c = new double[size()];
        for (int i = 0; i < zones; i++) {
            c[i] = brightness;
        }
        return c;
    }

    /**
     * The factors of the coefficients at a place on the disk or just outside it.
     *
     * @param weights filled with {@code 4 + 2 * HARMONICS} factors: those of four neighbouring zones, then the limb's
     * @return index of the first of the four zones
     */
    int weights(View view, double pole, double side, double[] weights) {
        double radius = view.ellipticRadius(pole, side);
        int first = 0;
        if (zones == 1) {
            weights[0] = 1;
            weights[1] = 0;
            weights[2] = 0;
            weights[3] = 0;
        } else {
            first = zoneWeights(latitude(view, pole, side, radius), weights);
        }
        limbWeights(pole, side, radius, weights);
        return first;
    }

    private static double latitude(View view, double pole, double side, double radius) {
        double inside = radius > 0.9995 ? 0.9995 / radius : 1;
        double depth = view.depth(pole * inside, side * inside);
        double sine = view.bodyZ(pole * inside, depth) / view.globe().axisRatio();
        return Math.asin(Math.max(-1, Math.min(1, sine)));
    }

    /** Cubic B-splines on evenly spaced parametric latitudes; they add up to one everywhere. */
    private int zoneWeights(double latitude, double[] weights) {
        double u = (latitude + Math.PI / 2) / zoneStep;
        int first = Math.max(0, Math.min(zones - 4, (int) u));
        double f = u - first;
        double g = 1 - f;
        weights[0] = g * g * g / 6;
        weights[1] = (4 - 3 * f * f * (2 - f)) / 6;
        weights[3] = f * f * f / 6;
        weights[2] = 1 - weights[0] - weights[1] - weights[3];
        return first;
    }

    private static void limbWeights(double pole, double side, double radius, double[] weights) {
        int at = 4;
        if (radius < LEAST_RADIUS) {
            java.util.Arrays.fill(weights, at, at + 2 * HARMONICS, 0);
            return;
        }
        double amount = radius >= 1 ? 1 : Math.pow(radius, LIMB_POWER);
        double length = Math.hypot(pole, side);
        double cos1 = side / length;
        double sin1 = pole / length;
        double cos = amount * cos1;
        double sin = amount * sin1;
        for (int m = 1; m <= HARMONICS; m++) {
            weights[at++] = cos;
            weights[at++] = sin;
            double next = cos * cos1 - sin * sin1;
            sin = sin * cos1 + cos * sin1;
            cos = next;
        }
    }

    /** The brightness factor for weights made by {@link #weights}. */
    double value(double[] coefficients, int first, double[] weights) {
        double sum = 0;
        for (int i = 0; i < Math.min(4, zones); i++) {
            sum += coefficients[first + i] * weights[i];
        }
        for (int i = 0; i < 2 * HARMONICS; i++) {
            sum += coefficients[zones + i] * weights[4 + i];
        }
        return sum;
    }
}
