package org.epochrome.disk.model;

import java.util.Arrays;
import java.util.stream.LongStream;
import org.epochrome.disk.BilinearShare;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.disk.solve.Huber;
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
    /** How far beyond the limb pixels count: blurs, and for a start that may be far off a part of the radius. */
    private static final double BEYOND_BLURS = 5;

    private static final double BEYOND_COARSE = 0.2;
    /** Elliptic radius up to which every few pixels of the sky tell wings and sky apart, and how few. */
    private static final double FAR = 1.6;

    private static final int SPARSE = 3;
    /** Steps of the elliptic radius by which pixels are put in order, and the last step, which holds all beyond. */
    private static final long RADIUS_STEPS = 100;

    private static final long LAST_STEP = 255;

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

    BlurredLayers blurred() {
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
     * The model with markings that are expected to follow the zones that the samples show.
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

    /** What the model leaves of the samples. */
    public ModelResiduals residuals() {
        return new ModelResiduals(this);
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

    /**
     * The pixels that a fit looks at: where the model is complete, and the sky around. Those that depend on the same markings follow
     * each other.
     */
    public int[] pixels() {
        double least = markings.leastRadius();
        if (least > 0) {
            least += shape[Unknowns.BLUR] / shape[Unknowns.RADIUS];
        }
        double most = mostRadius();
        long[] list = new long[width * height];
        int n = 0;
        double[] weights = new double[Markings.SPOKE_WEIGHTS];
        for (int y = Slope.REACH; y < height - Slope.REACH; y++) {
            for (int x = Slope.REACH; x < width - Slope.REACH; x++) {
                int p = y * width + x;
                double at = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                boolean chosen =
                        at <= most || (!markings.areCoarse() && at <= FAR && x % SPARSE == 0 && y % SPARSE == 0);
                if (at >= least && chosen && !Float.isNaN(samples.data().data()[p])) {
                    long radius = (long) Math.min(RADIUS_STEPS * at, LAST_STEP);
                    list[n++] = ((spoke(p, weights) * (LAST_STEP + 1) + radius) << Integer.SIZE) | p;
                }
            }
        }
        Arrays.sort(list, 0, n);
        return LongStream.of(list).limit(n).mapToInt(key -> (int) key).toArray();
    }

    /** The number of the first spoke on which a pixel's markings depend; fills in their weights. */
    int spoke(int pixel, double[] weights) {
        int x = pixel % width;
        int y = pixel / width;
        double pole = view.pole(x, y);
        double side = view.side(x, y);
        return markings.spokeWeights(Math.atan2(pole / view.limbRatio(), side), weights);
    }

    /** What the model leaves of a pixel; nothing where light was cut off and the model is darker. */
    double residual(int pixel) {
        return isDarkerThanCut(pixel) ? 0 : light(pixel) - blurred().picture()[pixel];
    }

    /** Whether light was cut off at a pixel where the model is darker: then the frame does not contradict it, nor tell how dark it is. */
    boolean isDarkerThanCut(int pixel) {
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
        Skyline normals = new ModelEquations(this, smear).observed(pixels, weights);
        markings.addPrior(coefficients, normals);
        return normals;
    }

    /** The normal equations whose inverse is the covariance, with markings that may stray farther than a fit lets them. */
    public Skyline information(int[] pixels, double[] weights) {
        Skyline information = new ModelEquations(this, smear).observed(pixels, weights);
        markings.addStrayingPrior(coefficients, information);
        return information;
    }
}
