package org.epochrome.align;

import java.util.List;
import java.util.Random;
import org.epochrome.image.Plane;

/**
 * Invented detail that is known at every fraction of a pixel: a sum of round Gaussians of random strength, moved by moving
 * their centres.
 */
final class Texture {
    static final int SIDE = 120;
    /** Standard deviation of its finest marks, pixels: what a frame's blur would leave. */
    static final double GRAIN_PX = 1.6;

    private static final int BLOBS = 700;

    private final double[] x = new double[BLOBS];
    private final double[] y = new double[BLOBS];
    private final double[] strength = new double[BLOBS];
    private final double[] width = new double[BLOBS];

    Texture(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < BLOBS; i++) {
            x[i] = SIDE * random.nextDouble();
            y[i] = SIDE * random.nextDouble();
            strength[i] = 0.03 * random.nextGaussian();
            width[i] = GRAIN_PX * (1 + random.nextDouble());
        }
    }

    /** The texture moved to the right and down. */
    Plane at(double dx, double dy) {
        return at(dx, dy, 1, 0);
    }

    /** The texture enlarged about the middle, turned counter-clockwise as displayed, and then moved. */
    Plane at(double dx, double dy, double scale, double turnRad) {
        double[] x = new double[BLOBS];
        double[] y = new double[BLOBS];
        double middle = 0.5 * (SIDE - 1);
        for (int i = 0; i < BLOBS; i++) {
            double u = scale * (this.x[i] - middle);
            double v = scale * (this.y[i] - middle);
            x[i] = middle + u * Math.cos(turnRad) + v * Math.sin(turnRad);
            y[i] = middle - u * Math.sin(turnRad) + v * Math.cos(turnRad);
        }
        return drawn(x, y, dx, dy);
    }

    private Plane drawn(double[] x, double[] y, double dx, double dy) {
        Plane plane = new Plane(SIDE, SIDE);
        for (int i = 0; i < BLOBS; i++) {
            double reach = 6 * width[i];
            int top = (int) Math.max(0, y[i] + dy - reach);
            int bottom = (int) Math.min(SIDE - 1, y[i] + dy + reach);
            int left = (int) Math.max(0, x[i] + dx - reach);
            int right = (int) Math.min(SIDE - 1, x[i] + dx + reach);
            for (int row = top; row <= bottom; row++) {
                for (int column = left; column <= right; column++) {
                    double u = (column - x[i] - dx) / width[i];
                    double v = (row - y[i] - dy) / width[i];
                    float here = plane.at(column, row);
                    plane.set(column, row, here + (float) (strength[i] * Math.exp(-0.5 * (u * u + v * v))));
                }
            }
        }
        return plane;
    }

    /** Detail on a disk that fills most of the picture. */
    static List<Detail> detail(Plane markings) {
        return List.of(new Detail(markings, disk(), GRAIN_PX, 0, 0));
    }

    /** 1 inside a disk, falling to 0 over eight pixels. */
    static Plane disk() {
        Plane weight = new Plane(SIDE, SIDE);
        for (int row = 0; row < SIDE; row++) {
            for (int column = 0; column < SIDE; column++) {
                double fromRim = 52 - Math.hypot(column - 0.5 * (SIDE - 1), row - 0.5 * (SIDE - 1));
                weight.set(column, row, (float) Math.max(0, Math.min(1, fromRim / 8)));
            }
        }
        return weight;
    }

    /** {@code a} times one plane plus {@code b} times another. */
    static Plane mixed(double a, Plane one, double b, Plane other) {
        Plane result = new Plane(one.width(), one.height());
        for (int i = 0; i < result.data().length; i++) {
            result.data()[i] = (float) (a * one.data()[i] + b * other.data()[i]);
        }
        return result;
    }

    /** White noise. */
    static Plane noise(double sigma, long seed) {
        Random random = new Random(seed);
        Plane plane = new Plane(SIDE, SIDE);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = (float) (sigma * random.nextGaussian());
        }
        return plane;
    }

    /** The root of the mean square. */
    static double rms(Plane plane) {
        double sum = 0;
        for (float v : plane.data()) {
            sum += v * v;
        }
        return Math.sqrt(sum / plane.data().length);
    }
}
