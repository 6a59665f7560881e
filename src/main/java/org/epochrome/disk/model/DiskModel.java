package org.epochrome.disk.model;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.epochrome.disk.BilinearShare;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.disk.solve.Huber;
import org.epochrome.disk.solve.ObservationBatch;
import org.epochrome.disk.solve.Skyline;
import org.epochrome.disk.solve.Slope;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.RowRuns;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.SmearModel;
import org.epochrome.image.blur.Wings;

/**
 * The forward model of a disk at given parameters, compared with the samples: sky plus blurred (shading x markings).
 *
 * <p>The derivatives by the markings' coefficients take it that a blur works along the limb and across it apart: each
 * ring of the picture is blurred once, all around the disk, and multiplied by the blurred weights of the spokes.
 */
public final class DiskModel {
    /** Part of the disk's brightness by which a real blur may differ from a Gaussian. */
    private static final double BLUR_DOUBT = 0.002;
    /** The same for coarse markings, which lack most detail. */
    private static final double COARSE_DOUBT = 0.01;
    /** How far beyond the limb pixels count: blurs, and for a start that may be far off a part of the radius. */
    private static final double BEYOND_BLURS = 5;

    private static final double BEYOND_COARSE = 0.2;
    /** Elliptic radius up to which every few pixels of the sky tell wings and sky apart, and how few. */
    private static final double FAR = 1.6;

    private static final int SPARSE = 3;
    /** How far from the limb residuals belong to it, blurs. */
    private static final double LIMB_BLURS = 2;
    /** Part of the pixels that may be wrong. */
    private static final double HOT = 0.05;

    /** Depths inside the limb, blurs, between which what a model leaves is judged apart. */
    private static final double[] DEPTHS = {1, 2, 4, 7};
    /** Side of a square of pixels whose detail is alike: detail that the markings lack counts for so much more than its scatter. */
    private static final double ALIKE = 3;

    private static final double FAINT = 1e-5;
    /** Parts in which the equations are added up, whatever the number of threads. */
    private static final int PARTS = 4;

    private final Samples samples;
    private final Globe globe;
    private final boolean mirrored;
    private final SmearModel smears;
    private final ShapedSmear shaped;
    private final Smear smear;
    private final Markings markings;
    private final double[] shape;
    private final double[] coefficients;
    private final int width;
    private final int height;
    private final View view;
    private LimbLawPrior lawPrior = LimbLawPrior.USUAL;
    /** Made when it is first needed, and not by two threads at a time. */
    private BlurredLayers blurred;

    /**
     * @param smears on the samples' pixels
     * @param shape the shape parameters
     * @param coefficients of the markings
     */
    public DiskModel(
            Samples samples,
            Globe globe,
            boolean mirrored,
            SmearModel smears,
            Markings markings,
            double[] shape,
            double[] coefficients) {
        this.samples = samples;
        this.globe = globe;
        this.mirrored = mirrored;
        this.smears = smears;
        this.markings = markings;
        this.shape = samples.surroundings().held(shape);
        this.coefficients = coefficients;
        shaped = ShapedSmear.of(smears, shape);
        smear = shaped.smear();
        width = samples.data().width();
        height = samples.data().height();
        view = new View(globe.withAxisRatio(globe.axisRatio() * (1 + shape[Unknowns.POLES])), disk());
    }

    /**
     * The core picture of an even globe with the model's law, to compare the disk inside the limb with: a blur also changes the light some
     * blurs inside.
     */
    Plane even() {
        double blurPx = Math.sqrt(shape[Unknowns.BLUR] * shape[Unknowns.BLUR] + BilinearShare.VARIANCE - Layers.PIXEL);
        return new Shading(shape[Unknowns.MINNAERT], shape[Unknowns.BRIGHTENING], blurPx, smear, Wings.NONE)
                .picture(view, width, height);
    }

    private BlurredLayers blurred() {
        if (blurred == null) {
            double needed = markings.leastRadius()
                    - (BEYOND_BLURS * shape[Unknowns.BLUR] + smear.farthestPx()) / shape[Unknowns.RADIUS];
            double most = mostRadius() + (Slope.REACH + 1) / shape[Unknowns.RADIUS];
            RowRuns runs = RowRuns.where(width, height, (x, y) -> {
                double at = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                return at > needed && at < most;
            });
            Plane[] sharp = Layers.sharp(
                    view,
                    shape[Unknowns.MINNAERT],
                    shape[Unknowns.BRIGHTENING],
                    markings,
                    coefficients,
                    width,
                    height,
                    needed);
            blurred = new BlurredLayers(sharp, shape[Unknowns.BLUR], shaped, runs);
        }
        return blurred;
    }

    public DiskModel with(double[] otherShape, double[] otherCoefficients) {
        DiskModel other = new DiskModel(samples, globe, mirrored, smears, markings, otherShape, otherCoefficients);
        other.lawPrior = lawPrior;
        return other;
    }

    /** The model with samples that the model completes where light was cut off. */
    public DiskModel completed() {
        float[] picture = blurred().picture();
        Samples whole = samples.completed(p -> samples.surroundings().at(shape, p) + picture[p]);
        DiskModel other = new DiskModel(whole, globe, mirrored, smears, markings, shape, coefficients);
        other.lawPrior = lawPrior;
        other.blurred = blurred;
        return other;
    }

    /**
     * The same with markings that are expected to follow the zones that the samples show.
     *
     * @param begin whether they are to follow them exactly for a start, before the sky is fitted
     */
    public DiskModel zoned(boolean begin) {
        Plane even = even();
        Markings along = markings.along(Zones.of(this, samples, even), view);
        DiskModel zoned =
                new DiskModel(samples, globe, mirrored, smears, along, shape, begin ? along.expected() : coefficients);
        zoned.lawPrior = LimbLawEstimate.of(this, samples, even, true, begin);
        zoned.blurred = begin ? null : blurred;
        return zoned;
    }

    /**
     * The model with a limb law that is expected to be the one that the disk inside the limb shows.
     *
     * @param begin whether the sky is still to be fitted
     */
    public DiskModel withExpectedLaw(boolean begin) {
        DiskModel other = with(shape, coefficients);
        other.blurred = blurred;
        other.lawPrior = LimbLawEstimate.of(this, samples, even(), false, begin);
        return other;
    }

    public double[] shape() {
        return shape;
    }

    public double[] coefficients() {
        return coefficients;
    }

    public Samples samples() {
        return samples;
    }

    /** What is expected of the limb's law. */
    public LimbLawPrior lawPrior() {
        return lawPrior;
    }

    public Markings markings() {
        return markings;
    }

    /** From the first to the last copy of the smear, sample pixels. */
    public double smearLength() {
        return smear.lengthPx();
    }

    /** How far the smear carries light at most, sample pixels. */
    double smearReach() {
        return smear.farthestPx();
    }

    public Globe globe() {
        return globe;
    }

    /** The visible globe where it lies in the samples. */
    public View view() {
        return view;
    }

    /** The disk on the samples' pixels. */
    public Disk disk() {
        return new Disk(
                shape[Unknowns.X],
                shape[Unknowns.Y],
                shape[Unknowns.RADIUS],
                Math.toDegrees(shape[Unknowns.NORTH]),
                mirrored);
    }

    /** Elliptic radius up to which pixels count. */
    private double mostRadius() {
        return 1
                + (BEYOND_BLURS * shape[Unknowns.BLUR] + 1 + smear.farthestPx()) / shape[Unknowns.RADIUS]
                + (markings.areCoarse() ? BEYOND_COARSE : 0);
    }

    /** The pixels that a fit looks at: where the model is complete, and the sky around. */
    public int[] pixels() {
        double least = markings.leastRadius();
        if (least > 0) {
            least += shape[Unknowns.BLUR] / shape[Unknowns.RADIUS];
        }
        double most = mostRadius();
        int[] list = new int[width * height];
        int n = 0;
        for (int y = Slope.REACH; y < height - Slope.REACH; y++) {
            for (int x = Slope.REACH; x < width - Slope.REACH; x++) {
                int p = y * width + x;
                double at = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                boolean chosen =
                        at <= most || (!markings.areCoarse() && at <= FAR && x % SPARSE == 0 && y % SPARSE == 0);
                if (at >= least && chosen && !Float.isNaN(samples.data().data()[p])) {
                    list[n++] = p;
                }
            }
        }
        return Arrays.copyOf(list, n);
    }

    /** Variances of the pixels: noise, doubt about the blur, detail that the markings lack. */
    public double[] variances(int[] pixels) {
        double doubt = markings.areCoarse() ? COARSE_DOUBT : BLUR_DOUBT;
        return variances(pixels, doubt * doubt);
    }

    /** The same with as much doubt as the residuals around the limb show beyond noise. */
    public double[] shownVariances(int[] pixels) {
        double[] beyond = new double[pixels.length];
        int n = 0;
        for (int p : pixels) {
            double inside = blursInside(p);
            if (inside > -LIMB_BLURS && inside < 1) {
                beyond[n++] = residual(p) * residual(p)
                        - samples.variance(samples.data().data()[p]);
            }
        }
        return variances(pixels, Math.max(0, meanWithoutWorst(beyond, n)));
    }

    private double[] variances(int[] pixels, double doubt) {
        double[] scatters = scatters(pixels);
        double[] variances = new double[pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            double brightness = samples.data().data()[pixels[i]];
            double inside = blursInside(pixels[i]);
            double detail = Math.min(markings.unseen(inside) * brightness, ALIKE * scatters[depth(inside)]);
            double twilight = markings.areBelted() ? Twilight.scatter(view, pixels[i] % width, pixels[i] / width) : 0;
            variances[i] = samples.variance(brightness) + doubt + detail * detail + twilight * twilight;
        }
        return variances;
    }

    /** Rms of what the model leaves at each depth inside the limb, without the worst pixels. */
    private double[] scatters(int[] pixels) {
        double[][] squares = new double[DEPTHS.length + 1][pixels.length];
        int[] counts = new int[DEPTHS.length + 1];
        for (int p : pixels) {
            int depth = depth(blursInside(p));
            squares[depth][counts[depth]++] = residual(p) * residual(p);
        }
        double[] scatters = new double[counts.length];
        for (int i = 0; i < counts.length; i++) {
            scatters[i] = Math.sqrt(meanWithoutWorst(squares[i], counts[i]));
        }
        return scatters;
    }

    private static int depth(double blursInside) {
        int depth = 0;
        while (depth < DEPTHS.length && blursInside > DEPTHS[depth]) {
            depth++;
        }
        return depth;
    }

    private double blursInside(int p) {
        int x = p % width;
        int y = p / width;
        double at = view.ellipticRadius(view.pole(x, y), view.side(x, y));
        return (1 - at) * shape[Unknowns.RADIUS] / shape[Unknowns.BLUR];
    }

    /**
     * Rms of what the model leaves within two blurs inside the limb, as a part of the disk's brightness, without the worst
     * pixels, which may be hot.
     */
    public double residual(int[] pixels) {
        double[] squares = new double[pixels.length];
        int n = 0;
        for (int p : pixels) {
            double inside = blursInside(p);
            if (inside > 0 && inside < LIMB_BLURS) {
                squares[n++] = residual(p) * residual(p);
            }
        }
        return Math.sqrt(meanWithoutWorst(squares, n));
    }

    private static double meanWithoutWorst(double[] values, int n) {
        Arrays.sort(values, 0, n);
        int kept = (int) Math.ceil(n * (1 - HOT));
        return Arrays.stream(values, 0, kept).average().orElse(0);
    }

    private double residual(int pixel) {
        return isDarkerThanCut(pixel) ? 0 : light(pixel) - blurred().picture()[pixel];
    }

    /** Whether light was cut off at a pixel where the model is darker: then the frame does not contradict it, nor tell how dark it is. */
    private boolean isDarkerThanCut(int pixel) {
        return samples.cut().get(pixel) && light(pixel) > blurred().picture()[pixel];
    }

    /** Light of the disk's core picture at a pixel of the samples: what sky and wings add is taken off. */
    double light(int pixel) {
        return samples.data().data()[pixel] - samples.surroundings().at(shape, pixel);
    }

    /** Weights by the variances, with outliers held down. */
    public double[] weights(int[] pixels, double[] variances) {
        double[] weights = new double[pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            weights[i] = Huber.weight(residual(pixels[i]), variances[i]);
        }
        return weights;
    }

    /** Weighted sum of squared residuals, and what the markings' prior adds. */
    public double misfit(int[] pixels, double[] weights) {
        double sum = 0;
        for (int i = 0; i < pixels.length; i++) {
            double r = residual(pixels[i]);
            sum += weights[i] * r * r;
        }
        return sum
                + markings.misfit(coefficients)
                + lawPrior.misfit(shape)
                + SmearPrior.misfit(shape)
                + PolarHaze.misfit(shape);
    }

    /** The normal equations: first the markings' coefficients, then the shape parameters. */
    public Skyline normals(int[] pixels, double[] weights) {
        Skyline normals = observed(pixels, weights);
        markings.addPrior(coefficients, normals);
        return normals;
    }

    /** The same whose inverse is the covariance, with markings that may stray farther than a fit lets them. */
    public Skyline information(int[] pixels, double[] weights) {
        Skyline information = observed(pixels, weights);
        markings.addStrayingPrior(coefficients, information);
        return information;
    }

    private Skyline observed(int[] pixels, double[] weights) {
        Plane[] layers = blurred().all();
        int[] first = markings.skyline(Unknowns.SHAPE);
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
        return parts[0];
    }

    private void addNormals(Plane[] layers, int[] pixels, double[] weights, int from, int to, Skyline normals) {
        ShapeSlopes shapeSlopes = new ShapeSlopes(
                shape,
                smear,
                blurred().picture(),
                blurred().moments(),
                layers[markings.rings() + 1].data(),
                layers[markings.rings() + 2].data(),
                samples);
        ObservationBatch batch = new ObservationBatch(
                normals, Markings.SPOKE_WEIGHTS + 1, Markings.SPOKE_WEIGHTS * markings.rings() + Unknowns.SHAPE);
        double[] w = new double[Markings.SPOKE_WEIGHTS];
        for (int k = from; k < to; k++) {
            if (isDarkerThanCut(pixels[k])) {
                continue;
            }
            slopes(layers, shapeSlopes, pixels[k], batch.starts(), batch.lengths(), batch.slopes(), w);
            batch.add(weights[k], residual(pixels[k]));
        }
        batch.end();
    }

    /** Derivatives of the model at a pixel: runs of rings, one for each spoke, and the shape. */
    private void slopes(
            Plane[] layers, ShapeSlopes shapeSlopes, int p, int[] starts, int[] lengths, double[] slopes, double[] w) {
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
        double direction = Math.atan2(view.pole(x, y) / view.limbRatio(), view.side(x, y));
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
        lengths[w.length] = Unknowns.SHAPE;
        shapeSlopes.put(x, y, slopes, n);
    }
}
