package org.epochrome.session.compare;

import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.image.Roughness;

/**
 * How bright a disk is and how noisy: what frames of a band are merged by. The brightness of the fitted model would not do,
 * for it hangs on the limb darkening, which blur and markings disturb; all the light of the disk does not.
 *
 * @param level light of the disk and its rings above the sky, by the area of the disk's circle
 * @param noise standard deviation of a pixel on the disk, as a part of the level
 */
public record FrameLight(double level, double noise) {
    private static final double INNER = 0.7;
    /** Parts of the model's brightness from which a pixel tells the noise: the night side is another thing. */
    private static final double LIT = 0.3;
    /** Rounding can hide all noise. */
    private static final double LEAST = 1e-6;
    /** How far light reaches: radii, and blurs. */
    private static final double OUTER = 1.05;

    private static final double RINGS = 2.35;
    private static final double BLURS = 4;

    public static FrameLight of(Plane plane, FittedDisk fit) {
        double level = level(plane, fit);
        return new FrameLight(level, Math.max(LEAST, Math.max(fit.noise(), sigma(plane, fit)) / level));
    }

    private static double level(Plane plane, FittedDisk fit) {
        double radius = fit.disk().equatorialRadiusPx();
        double reach = (fit.rings().isNone() ? OUTER : RINGS) * radius
                + BLURS * fit.shading().blurPx()
                + fit.shading().smear().lengthPx();
        double sum = 0;
        for (int y = first(fit.disk().y() - reach); y <= last(fit.disk().y() + reach, plane.height()); y++) {
            for (int x = first(fit.disk().x() - reach); x <= last(fit.disk().x() + reach, plane.width()); x++) {
                float value = plane.at(x, y);
                if (isWithin(reach, fit, x, y) && !Float.isNaN(value)) {
                    sum += value - fit.background();
                }
            }
        }
        return sum / (Math.PI * radius * radius);
    }

    /** By the mean {@link Roughness}. Detail adds a little, about the same to frames of one blur. */
    private static double sigma(Plane plane, FittedDisk fit) {
        double radius = INNER * fit.disk().equatorialRadiusPx();
        double dark = fit.background() + LIT * fit.brightness();
        double sum = 0;
        int count = 0;
        for (int y = first(fit.disk().y() - radius); y <= last(fit.disk().y() + radius, plane.height()); y++) {
            for (int x = first(fit.disk().x() - radius); x <= last(fit.disk().x() + radius, plane.width()); x++) {
                double difference = Roughness.at(plane, x, y);
                if (isWithin(radius, fit, x, y) && plane.at(x, y) > dark && !Double.isNaN(difference)) {
                    sum += Math.abs(difference);
                    count++;
                }
            }
        }
        return count == 0 ? 0 : Math.sqrt(Math.PI / 2) * sum / (Roughness.OF_NOISE * count);
    }

    private static boolean isWithin(double radius, FittedDisk fit, int x, int y) {
        double dx = x - fit.disk().x();
        double dy = y - fit.disk().y();
        return dx * dx + dy * dy < radius * radius;
    }

    /** First and last row or column, such that each has neighbours. */
    private static int first(double from) {
        return Math.max(1, (int) from);
    }

    private static int last(double to, int size) {
        return Math.min(size - 2, (int) to);
    }
}
