package org.epochrome.disk;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.epochrome.image.Gaussian;
import org.epochrome.image.Plane;
import org.epochrome.image.RowRuns;
import org.epochrome.image.Smear;

/**
 * The forward model of a disk at given parameters, compared with the samples: sky plus blurred (shading x markings).
 *
 * <p>The derivatives by the markings' coefficients take it that a blur works along the limb and across it apart: each
 * ring of the picture is blurred once, all around the disk, and multiplied by the blurred weights of the spokes.
 */
final class DiskModel {
    /** Shape parameters, the last unknowns of the equations; lengths in sample pixels, the angle in radians. */
    static final int X = 0;

    static final int Y = 1;
    static final int RADIUS = 2;
    static final int NORTH = 3;
    static final int MINNAERT = 4;
    static final int BLUR = 5;
    static final int SKY = 6;
    static final int SHAPE = 7;

    /** Residuals beyond this many standard deviations count less (Huber 1964, Ann. Math. Stat. 35, 73). */
    private static final double HUBER = 3.0;
    /** Part of the disk's brightness by which a real blur may differ from a Gaussian. */
    private static final double BLUR_DOUBT = 0.002;
    /** The same for coarse markings, which lack most detail. */
    private static final double COARSE_DOUBT = 0.01;
    /** How far beyond the limb pixels count: blurs, and for a start that may be far off a part of the radius. */
    private static final double BEYOND_BLURS = 5;

    private static final double BEYOND_COARSE = 0.2;
    /** Part of the pixels that may be wrong. */
    private static final double HOT = 0.05;

    private static final double FAINT = 1e-5;
    /** Parts in which the equations are added up, whatever the number of threads. */
    private static final int PARTS = 4;

    private final Samples samples;
    private final Globe globe;
    private final boolean mirrored;
    private final Smear smear;
    private final Markings markings;
    private final double[] shape;
    private final double[] coefficients;
    private final int width;
    private final int height;
    private final View view;
    /** Made when it is first needed, and not by two threads at a time. */
    private Blurred blurred;

    /**
     * @param smear on the samples' pixels
     * @param shape the shape parameters
     * @param coefficients of the markings
     */
    DiskModel(
            Samples samples,
            Globe globe,
            boolean mirrored,
            Smear smear,
            Markings markings,
            double[] shape,
            double[] coefficients) {
        this.samples = samples;
        this.globe = globe;
        this.mirrored = mirrored;
        this.smear = smear;
        this.markings = markings;
        this.shape = shape;
        this.coefficients = coefficients;
        width = samples.data().width();
        height = samples.data().height();
        view = new View(globe, disk());
    }

    /** The layers of the picture, blurred as far as they were asked for. */
    private final class Blurred {
        private final Plane[] layers;
        private final RowRuns runs;
        /** What a longer smear would change. */
        private final float[] moment;

        private boolean all;

        Blurred() {
            double needed = markings.leastRadius() - (BEYOND_BLURS * shape[BLUR] + smear.farthestPx()) / shape[RADIUS];
            layers = Layers.sharp(view, shape[MINNAERT], markings, coefficients, width, height, needed);
            double most = mostRadius() + (Slope.REACH + 1) / shape[RADIUS];
            runs = RowRuns.where(width, height, (x, y) -> {
                double at = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                return at > needed && at < most;
            });
            Plane round = Gaussian.blur(layers[markings.rings()], shape[BLUR], runs);
            layers[markings.rings()] = smear.of(round, runs);
            moment = smear.moment(round, runs).data();
        }

        private void blur(int i) {
            layers[i] = smear.of(Gaussian.blur(layers[i], shape[BLUR], runs), runs);
        }

        float[] picture() {
            return layers[markings.rings()].data();
        }

        /** The picture times each ring's weight, then the picture, then its derivative by the exponent. */
        Plane[] layers() {
            for (int i = 0; !all && i < layers.length; i++) {
                if (i != markings.rings()) {
                    blur(i);
                }
            }
            all = true;
            return layers;
        }
    }

    private Blurred blurred() {
        if (blurred == null) {
            blurred = new Blurred();
        }
        return blurred;
    }

    DiskModel with(double[] otherShape, double[] otherCoefficients) {
        return new DiskModel(samples, globe, mirrored, smear, markings, otherShape, otherCoefficients);
    }

    /**
     * The same with markings that are expected to follow the zones that the samples show.
     *
     * @param begin whether they are to follow them exactly for a start
     */
    DiskModel zoned(boolean begin) {
        Markings along = markings.along(Zones.of(this, samples), view);
        DiskModel zoned =
                new DiskModel(samples, globe, mirrored, smear, along, shape, begin ? along.expected() : coefficients);
        zoned.blurred = begin ? null : blurred;
        return zoned;
    }

    double[] shape() {
        return shape;
    }

    double[] coefficients() {
        return coefficients;
    }

    Markings markings() {
        return markings;
    }

    /** From the first to the last copy of the smear, sample pixels. */
    double smearLength() {
        return smear.lengthPx();
    }

    Globe globe() {
        return globe;
    }

    /** The disk on the samples' pixels. */
    Disk disk() {
        return new Disk(shape[X], shape[Y], shape[RADIUS], Math.toDegrees(shape[NORTH]), mirrored);
    }

    /** Elliptic radius up to which pixels count. */
    private double mostRadius() {
        return 1
                + (BEYOND_BLURS * shape[BLUR] + 1 + smear.farthestPx()) / shape[RADIUS]
                + (markings.areCoarse() ? BEYOND_COARSE : 0);
    }

    /** The pixels that a fit looks at: where the model is complete, and the sky around. */
    int[] pixels() {
        double least = markings.leastRadius();
        if (least > 0) {
            least += shape[BLUR] / shape[RADIUS];
        }
        double most = mostRadius();
        int[] list = new int[width * height];
        int n = 0;
        for (int y = Slope.REACH; y < height - Slope.REACH; y++) {
            for (int x = Slope.REACH; x < width - Slope.REACH; x++) {
                int p = y * width + x;
                double at = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                if (at >= least && at <= most && !Float.isNaN(samples.data().data()[p])) {
                    list[n++] = p;
                }
            }
        }
        return Arrays.copyOf(list, n);
    }

    /** Variances of the pixels: noise, doubt about the blur, detail that the markings lack. */
    double[] variances(int[] pixels) {
        double[] variances = new double[pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            double brightness = samples.data().data()[pixels[i]];
            double detail = markings.unseen(blursInside(pixels[i])) * brightness;
            double blur = markings.areCoarse() ? COARSE_DOUBT : BLUR_DOUBT;
            variances[i] = samples.variance(brightness) + blur * blur + detail * detail;
        }
        return variances;
    }

    private double blursInside(int p) {
        int x = p % width;
        int y = p / width;
        double at = view.ellipticRadius(view.pole(x, y), view.side(x, y));
        return (1 - at) * shape[RADIUS] / shape[BLUR];
    }

    /**
     * Rms of what the model leaves within two blurs inside the limb, as a part of the disk's brightness, without the worst
     * pixels, which may be hot.
     */
    double residual(int[] pixels) {
        double[] squares = new double[pixels.length];
        int n = 0;
        for (int p : pixels) {
            double inside = blursInside(p);
            if (inside > 0 && inside < 2) {
                squares[n++] = residual(p) * residual(p);
            }
        }
        Arrays.sort(squares, 0, n);
        int kept = (int) Math.ceil(n * (1 - HOT));
        return Math.sqrt(Arrays.stream(squares, 0, kept).average().orElse(0));
    }

    private double residual(int pixel) {
        return samples.data().data()[pixel] - shape[SKY] - blurred().picture()[pixel];
    }

    /** Weights by the variances, with outliers held down. */
    double[] weights(int[] pixels, double[] variances) {
        double[] weights = new double[pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            double sigmas = Math.abs(residual(pixels[i])) / Math.sqrt(variances[i]);
            weights[i] = (sigmas > HUBER ? HUBER / sigmas : 1) / variances[i];
        }
        return weights;
    }

    /** Weighted sum of squared residuals, and what the markings' prior adds. */
    double misfit(int[] pixels, double[] weights) {
        double sum = 0;
        for (int i = 0; i < pixels.length; i++) {
            double r = residual(pixels[i]);
            sum += weights[i] * r * r;
        }
        return sum + markings.misfit(coefficients);
    }

    /** The normal equations: first the markings' coefficients, then the shape parameters. */
    Skyline normals(int[] pixels, double[] weights) {
        Plane[] layers = blurred().layers();
        int[] first = markings.skyline(SHAPE);
        Skyline[] parts = new Skyline[PARTS];
        IntStream.range(0, PARTS).parallel().forEach(part -> {
            int start = (int) ((long) pixels.length * part / PARTS);
            int end = (int) ((long) pixels.length * (part + 1) / PARTS);
            parts[part] = new Skyline(first);
            addNormals(layers, pixels, weights, start, end, parts[part]);
        });
        for (int i = 1; i < PARTS; i++) {
            parts[0].add(parts[i]);
        }
        markings.addPrior(coefficients, parts[0]);
        return parts[0];
    }

    private void addNormals(Plane[] layers, int[] pixels, double[] weights, int from, int to, Skyline normals) {
        int[] starts = new int[Markings.SPOKE_WEIGHTS + 1];
        int[] lengths = new int[starts.length];
        double[] slopes = new double[Markings.SPOKE_WEIGHTS * markings.rings() + SHAPE];
        double[] w = new double[Markings.SPOKE_WEIGHTS];
        for (int k = from; k < to; k++) {
            slopes(layers, pixels[k], starts, lengths, slopes, w);
            normals.addObservation(starts.length, starts, lengths, slopes, weights[k], residual(pixels[k]));
        }
    }

    /** Derivatives of the model at a pixel: runs of rings, one for each spoke, and the shape. */
    private void slopes(Plane[] layers, int p, int[] starts, int[] lengths, double[] slopes, double[] w) {
        int x = p % width;
        int y = p / width;
        int rings = markings.rings();
        int least = 0;
        while (least < rings && layers[least].data()[p] <= FAINT) {
            least++;
        }
        int most = rings;
        while (most > least && layers[most - 1].data()[p] <= FAINT) {
            most--;
        }
        double direction = Math.atan2(view.pole(x, y) / globe.apparentAxisRatio(), view.side(x, y));
        int spoke = markings.spokeWeights(direction, w);
        int wrapped = Math.max(0, spoke + w.length - markings.spokes());
        int n = 0;
        for (int i = 0; i < w.length; i++) {
            // Spokes beyond the last are the first ones and come first.
            int s = i < wrapped ? w.length - wrapped + i : i - wrapped;
            starts[i] = (spoke + s) % markings.spokes() * rings + least;
            lengths[i] = most - least;
            for (int r = least; r < most; r++) {
                slopes[n++] = layers[r].data()[p] * w[s];
            }
        }
        starts[w.length] = markings.size();
        lengths[w.length] = SHAPE;
        shapeSlopes(layers, x, y, slopes, n);
    }

    /** Derivatives by the shape parameters, from the slopes of the picture itself. */
    private void shapeSlopes(Plane[] layers, int x, int y, double[] slopes, int at) {
        int p = y * width + x;
        float[] picture = layers[markings.rings()].data();
        double right = Slope.first(picture, p, 1);
        double down = Slope.first(picture, p, width);
        double laplacian = Slope.second(picture, p, 1) + Slope.second(picture, p, width);
        double dx = x - shape[X];
        double dy = y - shape[Y];
        double blur = shape[BLUR];
        float[] moment = blurred().moment;
        double longerRight = smear == Smear.NONE ? 0 : Slope.first(moment, p, 1);
        double longerDown = smear == Smear.NONE ? 0 : Slope.first(moment, p, width);
        slopes[at + X] = -right;
        slopes[at + Y] = -down;
        // A Gaussian obeys the equation of heat; a larger disk is the same picture enlarged, less its larger blur and
        // longer smear, a turned one the same picture turned, but for its smear.
        slopes[at + BLUR] = blur * laplacian;
        double longer = smear.right() * longerRight + smear.down() * longerDown;
        slopes[at + RADIUS] =
                -(dx * right + dy * down + (blur * blur + Layers.SPREAD) * laplacian - longer) / shape[RADIUS];
        slopes[at + NORTH] = dx * down - dy * right - (smear.right() * longerDown - smear.down() * longerRight);
        slopes[at + MINNAERT] = layers[markings.rings() + 1].data()[p];
        slopes[at + SKY] = 1;
    }
}
