package org.epochrome.disk.fit;

import java.util.Arrays;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.epochrome.disk.Disk;
import org.epochrome.disk.View;
import org.epochrome.disk.model.DiskModel;
import org.epochrome.disk.model.Samples;
import org.epochrome.disk.model.ShapeSlopes;
import org.epochrome.disk.model.Unknowns;
import org.epochrome.disk.solve.Huber;
import org.epochrome.disk.solve.Skyline;
import org.epochrome.disk.solve.Slope;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Smear;

/**
 * The forward model of a ringed planet at given parameters, compared with the samples: sky plus blurred globe (zones by
 * latitude, shaded by Minnaert's law, behind and in the shadow of the rings) plus blurred rings. Shape parameters are
 * those of {@link DiskModel}; brightnesses of zones and rings are linear unknowns that come before them.
 */
final class RingedModel {
    /** Part of the brightness by which a real blur may differ from a Gaussian, and rings from their profile. */
    private static final double BLUR_DOUBT = 0.002;

    private static final double RING_DOUBT = 0.01;
    /** Markings along the zones, as a part of their brightness. */
    private static final double MARKINGS = 0.02;
    /** How far beyond the light pixels count: blurs. */
    private static final double BEYOND_BLURS = 5;
    /** Expected second differences of neighbouring brightnesses, and their own scatter, in the globe's brightness. */
    private static final double BEND = 0.1;

    private static final double SCATTER = 1;
    static final double USUAL_RINGS = 0.5;
    /** Share of a layer in a pixel, below which it is left out of the equations. */
    private static final double FAINT = 3e-4;

    private static final int PARTS = 4;
    /** Part of the pixels that may be wrong. */
    private static final double HOT = 0.005;

    private final Samples samples;
    private final Facets facets;
    private final boolean mirrored;
    private final Smear smear;
    private final double[] shape;
    private final double[] coefficients;
    private final int width;
    private final int height;
    private final View view;
    private final float[][] layers;
    private final float[] globe;
    private final float[] picture;
    private final float[] moment;

    RingedModel(Samples samples, Facets facets, boolean mirrored, Smear smear, double[] shape, double[] coefficients) {
        this.samples = samples;
        this.facets = facets;
        this.mirrored = mirrored;
        this.smear = smear;
        this.shape = samples.surroundings().held(shape);
        this.coefficients = coefficients;
        width = samples.data().width();
        height = samples.data().height();
        view = new View(facets.globe(), disk());
        int count = facets.layers();
        layers = new float[count + 2][width * height];
        facets.draw(view, shape[Unknowns.RADIUS], shape[Unknowns.MINNAERT], coefficients, layers, width, height);
        each(plane -> Gaussian.blur(plane, shape[Unknowns.BLUR]));
        moment = smear.moment(new Plane(width, height, sum(count))).data();
        each(smear::of);
        globe = sum(facets.zones());
        picture = sum(count);
    }

    private void each(UnaryOperator<Plane> change) {
        IntStream.range(0, layers.length)
                .parallel()
                .forEach(i -> layers[i] =
                        change.apply(new Plane(width, height, layers[i])).data());
    }

    /** The first layers, each times its brightness. */
    private float[] sum(int count) {
        float[] sum = new float[width * height];
        for (int i = 0; i < count; i++) {
            float c = (float) coefficients[i];
            float[] layer = layers[i];
            for (int p = 0; p < sum.length; p++) {
                sum[p] += c * layer[p];
            }
        }
        return sum;
    }

    RingedModel with(double[] otherShape, double[] otherCoefficients) {
        return new RingedModel(samples, facets, mirrored, smear, otherShape, otherCoefficients);
    }

    double[] shape() {
        return shape;
    }

    double[] coefficients() {
        return coefficients;
    }

    /** The disk on the samples' pixels. */
    Disk disk() {
        return new Disk(
                shape[Unknowns.X],
                shape[Unknowns.Y],
                shape[Unknowns.RADIUS],
                Math.toDegrees(shape[Unknowns.NORTH]),
                mirrored);
    }

    /**
     * The pixels that a fit looks at: globe, rings and the sky around.
     *
     * @param margin beyond the blur, radii
     */
    int[] pixels(double margin) {
        double beyond = BEYOND_BLURS * shape[Unknowns.BLUR] / shape[Unknowns.RADIUS] + margin;
        double open = Math.abs(Math.sin(facets.globe().tilt()));
        double ratio = facets.globe().apparentAxisRatio();
        double outer = facets.globe().extent();
        int[] list = new int[width * height];
        int n = 0;
        for (int y = Slope.REACH; y < height - Slope.REACH; y++) {
            for (int x = Slope.REACH; x < width - Slope.REACH; x++) {
                double pole = view.pole(x, y);
                double side = view.side(x, y);
                boolean near = square(side / (1 + beyond)) + square(pole / (ratio + beyond)) < 1
                        || square(side / (outer + beyond)) + square(pole / (outer * open + beyond)) < 1;
                if (near && !Float.isNaN(samples.data().data()[y * width + x])) {
                    list[n++] = y * width + x;
                }
            }
        }
        return Arrays.copyOf(list, n);
    }

    /** Variances of the pixels: noise, doubts about blur, rings and optical depths, detail that zones lack. */
    double[] variances(int[] pixels) {
        double[] variances = new double[pixels.length];
        float[] veiled = layers[facets.layers() + 1];
        for (int i = 0; i < pixels.length; i++) {
            int p = pixels[i];
            double brightness = samples.data().data()[p];
            variances[i] = samples.variance(brightness)
                    + square(BLUR_DOUBT * brightness)
                    + square(MARKINGS * globe[p])
                    + square(RING_DOUBT * (picture[p] - globe[p]))
                    + square(veiled[p]);
        }
        return variances;
    }

    private double residual(int p) {
        return samples.data().data()[p] - samples.surroundings().at(shape, p) - picture[p];
    }

    /** Rms of what the model leaves, in the disk's brightness, without the worst pixels, which may be hot. */
    double residual(int[] pixels) {
        double[] squares = new double[pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            squares[i] = square(residual(pixels[i]));
        }
        Arrays.sort(squares);
        return Math.sqrt(Arrays.stream(squares, 0, (int) Math.ceil(squares.length * (1 - HOT)))
                .average()
                .orElse(0));
    }

    /** Weights by the variances, with outliers held down. */
    double[] weights(int[] pixels, double[] variances) {
        double[] weights = new double[pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            weights[i] = Huber.weight(residual(pixels[i]), variances[i]);
        }
        return weights;
    }

    /** Weighted sum of squared residuals and what the prior adds. */
    double misfit(int[] pixels, double[] weights) {
        double sum = 0;
        for (int i = 0; i < pixels.length; i++) {
            sum += weights[i] * square(residual(pixels[i]));
        }
        double[] prior = {0};
        prior((i, j, k) -> prior[0] += square(bend(i, j, k) / BEND), (i, off) -> prior[0] += square(off / SCATTER));
        return sum + prior[0];
    }

    /** The normal equations: first the brightnesses, then the shape parameters. */
    Skyline normals(int[] pixels, double[] weights) {
        int[] first = new int[facets.layers() + Unknowns.SHAPE];
        Skyline[] parts = new Skyline[PARTS];
        IntStream.range(0, PARTS).parallel().forEach(part -> {
            int start = (int) ((long) pixels.length * part / PARTS);
            int end = (int) ((long) pixels.length * (part + 1) / PARTS);
            parts[part] = new Skyline(first);
            addNormals(pixels, weights, start, end, parts[part]);
        });
        for (int i = 1; i < PARTS; i++) {
            parts[0].add(parts[i]);
        }
        addPrior(parts[0]);
        return parts[0];
    }

    private void addNormals(int[] pixels, double[] weights, int from, int to, Skyline normals) {
        int count = facets.layers();
        // Brightening and the smear's shape are held here, so any picture does for their derivatives.
        float[][] moments = {moment, moment, moment};
        ShapeSlopes shapeSlopes =
                new ShapeSlopes(shape, smear, picture, moments, layers[count], layers[count], samples);
        int[] starts = new int[count + 1];
        int[] lengths = new int[count + 1];
        double[] slopes = new double[count + Unknowns.SHAPE];
        Arrays.fill(lengths, 1);
        for (int k = from; k < to; k++) {
            int p = pixels[k];
            int n = 0;
            for (int i = 0; i < count; i++) {
                if (layers[i][p] > FAINT) {
                    starts[n] = i;
                    lengths[n] = 1;
                    slopes[n++] = layers[i][p];
                }
            }
            starts[n] = count;
            lengths[n] = Unknowns.SHAPE;
            shapeSlopes.put(p % width, p / width, slopes, n);
            normals.addObservation(n + 1, starts, lengths, slopes, weights[k], residual(p));
        }
    }

    private interface Bend {
        void at(int i, int j, int k);
    }

    private interface Level {
        void at(int i, double off);
    }

    private double bend(int i, int j, int k) {
        return coefficients[i] - 2 * coefficients[j] + coefficients[k];
    }

    private void prior(Bend bends, Level levels) {
        int[] groups = facets.groups();
        for (int g = 0; g + 1 < groups.length; g++) {
            for (int i = groups[g]; i < groups[g + 1]; i++) {
                levels.at(i, (g == 0 ? 1 : USUAL_RINGS) - coefficients[i]);
                if (i + 2 < groups[g + 1]) {
                    bends.at(i, i + 1, i + 2);
                }
            }
        }
    }

    private void addPrior(Skyline normals) {
        double curved = 1 / square(BEND);
        double level = 1 / square(SCATTER);
        int[] factors = {1, -2, 1};
        prior(
                (i, j, k) -> {
                    double bend = bend(i, j, k);
                    for (int a = 0; a < factors.length; a++) {
                        for (int b = 0; b <= a; b++) {
                            normals.add(i + a, i + b, curved * factors[a] * factors[b]);
                        }
                        normals.addRight(i + a, -curved * factors[a] * bend);
                    }
                },
                (i, off) -> {
                    normals.add(i, i, level);
                    normals.addRight(i, level * off);
                });
    }

    private static double square(double v) {
        return v * v;
    }
}
