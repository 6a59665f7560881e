package org.epochrome.image.blur;

import java.util.Arrays;
import org.epochrome.image.Plane;

/**
 * What a spread function has besides its Gaussian core: wings, a halo, or the negative lobes that sharpening leaves. Light is
 * spread again from where it was seen: {@code seen = (1 - sum(v)) core + sum(v_i G_i * seen)}, with G_i Gaussians of given
 * widths and v_i the parts of the light that they spread. The whole keeps the light. In terms of the seen picture this is linear,
 * so that a fit can tell the parts from a frame without knowing what the frame shows; and it can be undone by blurs alone.
 */
public final class Wings {
    /** A spread function that is nothing but its core. */
    public static final Wings NONE = new Wings(new double[0], new double[0]);

    /** Gain of what is spread again at any spatial frequency at most: with a gain of 1 light would be spread for ever. */
    private static final double MOST_GAIN = 0.8;
    /** Where the gain is looked at: sigmas in cycles. */
    private static final double[] CYCLES = {0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4};

    private static final double REACH = 3;

    private final double[] widthsPx;
    private final double[] parts;

    private Wings(double[] widthsPx, double[] parts) {
        this.widthsPx = widthsPx;
        this.parts = parts;
    }

    /**
     * Wings of some widths.
     *
     * @param widthsPx standard deviations, pixels
     * @param parts of the light, negative where a frame was sharpened; as small as {@link #held} makes them
     */
    public static Wings of(double[] widthsPx, double[] parts) {
        if (widthsPx.length != parts.length || !(most(widthsPx, parts) <= MOST_GAIN + 1e-9)) {
            throw new IllegalArgumentException("Scattered light cannot be modelled by " + Arrays.toString(parts) + ".");
        }
        return Arrays.stream(parts).allMatch(p -> p == 0) ? NONE : new Wings(widthsPx.clone(), parts.clone());
    }

    /** The parts made smaller in common, if need be, so that light does not grow by being spread again. */
    public static double[] held(double[] widthsPx, double[] parts) {
        double most = most(widthsPx, parts);
        double factor = most > MOST_GAIN ? MOST_GAIN / most : 1;
        return Arrays.stream(parts).map(p -> p * factor).toArray();
    }

    /** The greatest gain at any spatial frequency. */
    private static double most(double[] widthsPx, double[] parts) {
        double most = 0;
        for (double width : widthsPx) {
            for (double cycles : CYCLES) {
                double frequency = cycles / width;
                most = Math.max(most, gain(widthsPx, parts, frequency * frequency));
            }
        }
        return most;
    }

    /** Standard deviations of the Gaussians, pixels. */
    public double[] widthsPx() {
        return widthsPx.clone();
    }

    /** Part of the light that each of them spreads. */
    public double[] parts() {
        return parts.clone();
    }

    /** Part of the light that is spread. */
    public double spread() {
        return Arrays.stream(parts).sum();
    }

    /** These wings on an image enlarged by a factor. */
    public Wings scaled(double factor) {
        return parts.length == 0
                ? this
                : new Wings(Arrays.stream(widthsPx).map(w -> w * factor).toArray(), parts);
    }

    /**
     * A sharp picture blurred by this spread function. Everything outside counts as dark.
     *
     * @param corePx standard deviation of its core, pixels
     */
    public Plane of(Plane sharp, double corePx) {
        if (parts.length == 0) {
            return Gaussian.blur(sharp, corePx);
        }
        double kept = 1 - spread();
        double[] sigmas = new double[widthsPx.length + 1];
        System.arraycopy(widthsPx, 0, sigmas, 0, widthsPx.length);
        sigmas[widthsPx.length] = corePx;
        return filter(sharp).with(sigmas, g -> g[g.length - 1] * kept / (1 - gain(g)));
    }

    /** A picture of the core with the wings. Everything outside counts as dark. */
    public Plane of(Plane core) {
        double kept = 1 - spread();
        return parts.length == 0 ? core : filter(core).with(widthsPx, g -> kept / (1 - gain(g)));
    }

    /** The core of a picture that has these wings. */
    public Plane without(Plane seen) {
        double kept = 1 - spread();
        return parts.length == 0 ? seen : filter(seen).with(widthsPx, g -> (1 - gain(g)) / kept);
    }

    /** Transfer function of all that spreads again, by those of its Gaussians. */
    private double gain(double[] gaussians) {
        double sum = 0;
        for (int i = 0; i < parts.length; i++) {
            sum += parts[i] * gaussians[i];
        }
        return sum;
    }

    /** What these wings let through of a spatial frequency, in cycles per pixel, besides what their core does. */
    public double transfer(double frequency) {
        return (1 - spread()) / (1 - gain(widthsPx, parts, frequency * frequency));
    }

    private RadialFilter filter(Plane plane) {
        return new RadialFilter(plane, REACH * Arrays.stream(widthsPx).max().orElse(0));
    }

    private static double gain(double[] widthsPx, double[] parts, double squaredFrequency) {
        double sum = 0;
        for (int i = 0; i < parts.length; i++) {
            sum += parts[i] * transfer(widthsPx[i], squaredFrequency);
        }
        return sum;
    }

    private static double transfer(double sigmaPx, double squaredFrequency) {
        return Math.exp(-2 * Math.PI * Math.PI * sigmaPx * sigmaPx * squaredFrequency);
    }

    /** A picture blurred by Gaussians of some widths. */
    public static Plane[] blurred(Plane plane, double... widthsPx) {
        RadialFilter filter =
                new RadialFilter(plane, REACH * Arrays.stream(widthsPx).max().orElse(0));
        return Arrays.stream(widthsPx)
                .mapToObj(w -> filter.with(new double[] {w}, g -> g[0]))
                .toArray(Plane[]::new);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Wings w && Arrays.equals(widthsPx, w.widthsPx) && Arrays.equals(parts, w.parts);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(widthsPx) + Arrays.hashCode(parts);
    }

    @Override
    public String toString() {
        return "Wings " + Arrays.toString(widthsPx) + " " + Arrays.toString(parts);
    }
}
