package org.epochrome.disk;

import java.util.Arrays;
import org.epochrome.image.Gaussian;
import org.epochrome.image.Plane;
import org.epochrome.image.Smear;
import org.epochrome.job.Rows;

/**
 * The forward model of a disk at given parameters, compared with the data: {@code sky + albedo x blurred shading}. Data
 * are in units of the disk's brightness.
 */
final class DiskModel {
    static final int X = 0;
    static final int Y = 1;
    static final int RADIUS = 2;
    static final int NORTH = 3;
    static final int MINNAERT = 4;
    static final int BLUR = 5;
    static final int SKY = 6;
    /** North angle that the belts show, which waver and so do not tell the axis itself. */
    static final int BELTS = 7;
    /** Number of parameters before the albedo's coefficients. */
    static final int SHAPE = 8;

    /** Residuals beyond this many standard deviations count less (Huber 1964). */
    private static final double HUBER = 2.0;
    /** Part of the brightness by which a real blur may differ from a Gaussian. */
    private static final double BLUR_DOUBT = 0.004;

    private static final double LEAST_MARKING = 0.004;
    /** Over what part of the radius the strength of markings is averaged. */
    private static final double MARKING_REACH = 0.05;

    /** Pixels across the radius that the fit looks at away from the limb: few, lest markings there outweigh the limb. */
    private static final double INNER_GRID = 24;

    private static final int BLOCK = 2048;

    private final Plane data;
    private final Globe globe;
    private final boolean mirrored;
    private final Smear smear;
    private final Albedo albedo;
    private final double[] parameters;
    private final View view;
    private final View belts;
    private final Plane shade;
    private final Plane picture;

    DiskModel(Plane data, Globe globe, boolean mirrored, Smear smear, Albedo albedo, double[] parameters) {
        this.data = data;
        this.globe = globe;
        this.mirrored = mirrored;
        this.smear = smear;
        this.albedo = albedo;
        this.parameters = parameters;
        view = new View(globe, disk());
        belts = new View(globe, disk().withNorth(Math.toDegrees(parameters[BELTS])));
        shade = shading().picture(view, data.width(), data.height());
        picture = albedoTimes(shade);
    }

    DiskModel with(double[] other) {
        return new DiskModel(data, globe, mirrored, smear, albedo, other);
    }

    double[] parameters() {
        return parameters;
    }

    Disk disk() {
        return new Disk(parameters[X], parameters[Y], parameters[RADIUS], Math.toDegrees(parameters[NORTH]), mirrored);
    }

    Shading shading() {
        return new Shading(parameters[MINNAERT], parameters[BLUR], smear);
    }

    private Plane albedoTimes(Plane shading) {
        int width = data.width();
        Plane product = new Plane(width, data.height());
        double[] coefficients = Arrays.copyOfRange(parameters, SHAPE, parameters.length);
        Rows.each(data.height(), (from, to) -> {
            double[] weights = new double[4 + albedo.size()];
            for (int y = from; y < to; y++) {
                for (int x = 0; x < width; x++) {
                    float s = shading.at(x, y);
                    if (s != 0) {
                        int first = albedo.weights(belts, belts.pole(x, y), belts.side(x, y), weights);
                        product.set(x, y, (float) (s * albedo.value(coefficients, first, weights)));
                    }
                }
            }
        });
        return product;
    }

    /**
     * The pixels that a fit looks at: all around the limb, a thinned-out grid elsewhere, where markings rather than
     * noise limit it.
     */
    int[] pixels() {
        double radius = parameters[RADIUS];
        double reach = Math.max(4, 4 * parameters[BLUR]);
        int thin = Math.max(1, (int) Math.round(radius / INNER_GRID));
        int[] list = new int[data.width() * data.height()];
        int n = 0;
        for (int y = 2; y < data.height() - 2; y++) {
            for (int x = 2; x < data.width() - 2; x++) {
                if (Float.isNaN(data.at(x, y))) {
                    continue;
                }
                double beyond = (view.ellipticRadius(view.pole(x, y), view.side(x, y)) - 1) * radius;
                boolean kept = Math.abs(beyond) < reach ? true : x % thin == 0 && y % thin == 0 && beyond < 3 * reach;
                if (kept) {
                    list[n++] = y * data.width() + x;
                }
            }
        }
        return Arrays.copyOf(list, n);
    }

    /**
     * How much the markings that the model lacks stand out, as a part of the brightness, at each pixel: a running rms of
     * the relative residual. Even stretches of the limb then count far more than those with a cap or a cloud.
     */
    Plane markings() {
        Plane square = new Plane(data.width(), data.height());
        Plane weight = new Plane(data.width(), data.height());
        for (int i = 0; i < square.data().length; i++) {
            float model = picture.data()[i];
            if (model > 0.1 && !Float.isNaN(data.data()[i])) {
                double relative = residual(i) / model;
                square.data()[i] = (float) (model * relative * relative);
                weight.data()[i] = model;
            }
        }
        double reach = Math.max(2, MARKING_REACH * parameters[RADIUS]);
        Plane sum = Gaussian.blur(square, reach);
        Plane count = Gaussian.blur(weight, reach);
        for (int i = 0; i < square.data().length; i++) {
            double mean = sum.data()[i] / Math.max(1e-3, count.data()[i]);
            sum.data()[i] = (float) Math.max(LEAST_MARKING, Math.min(0.5, Math.sqrt(mean)));
        }
        return sum;
    }

    private double residual(int pixel) {
        return data.data()[pixel] - parameters[SKY] - picture.data()[pixel];
    }

    /**
     * Statistical weights of the pixels: sky noise, markings in proportion to the brightness, and the doubt about the
     * blur, with outliers held down.
     */
    double[] weights(int[] pixels, double noise, Plane markings) {
        double[] weights = new double[pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            double s = markings.data()[pixels[i]] * picture.data()[pixels[i]];
            double variance = noise * noise + s * s + BLUR_DOUBT * BLUR_DOUBT;
            double sigmas = Math.abs(residual(pixels[i])) / Math.sqrt(variance);
            weights[i] = (sigmas > HUBER ? HUBER / sigmas : 1) / variance;
        }
        return weights;
    }

    /** Weighted sum of squared residuals. */
    double misfit(int[] pixels, double[] weights) {
        double sum = 0;
        for (int i = 0; i < pixels.length; i++) {
            double r = residual(pixels[i]);
            sum += weights[i] * r * r;
        }
        return sum;
    }

    /** Adds the data's part of the normal equations: {@code matrix} (upper triangle) and {@code vector}. */
    void addNormals(int[] pixels, double[] weights, double[][] matrix, double[] vector) {
        Plane byExponent = albedoTimes(shading().exponentDerivative(view, data.width(), data.height()));
        int size = parameters.length;
        int blocks = (pixels.length + BLOCK - 1) / BLOCK;
        double[][][] parts = new double[blocks][][];
        Rows.each(blocks * 16, (from, to) -> {
            for (int row = from; row < to; row++) {
                if (row % 16 == 0) {
                    int block = row / 16;
                    parts[block] = block(
                            pixels, weights, block * BLOCK, Math.min(pixels.length, (block + 1) * BLOCK), byExponent);
                }
            }
        });
        for (double[][] part : parts) {
            for (int i = 0; i < size; i++) {
                for (int j = i; j < size; j++) {
                    matrix[i][j] += part[i][j];
                }
                vector[i] += part[size][i];
            }
        }
    }

    private double[][] block(int[] pixels, double[] weights, int from, int to, Plane byExponent) {
        int size = parameters.length;
        double[][] sum = new double[size + 1][size];
        int shared = SHAPE + Math.min(4, albedo.zones());
        int limb = albedo.size() - albedo.zones();
        int[] column = new int[shared + limb];
        double[] slope = new double[shared + limb];
        double[] factors = new double[4 + albedo.size()];
        for (int i = 0; i < SHAPE; i++) {
            column[i] = i;
        }
        for (int i = 0; i < limb; i++) {
            column[shared + i] = SHAPE + albedo.zones() + i;
        }
        for (int k = from; k < to; k++) {
            int p = pixels[k];
            int x = p % data.width();
            int y = p / data.width();
            shapeSlopes(x, y, byExponent.data()[p], slope);
            int first = albedo.weights(belts, belts.pole(x, y), belts.side(x, y), factors);
            double s = shade.data()[p];
            for (int i = SHAPE; i < shared; i++) {
                column[i] = first + i;
                slope[i] = s * factors[i - SHAPE];
            }
            for (int i = 0; i < limb; i++) {
                slope[shared + i] = s * factors[4 + i];
            }
            double r = residual(p);
            for (int i = 0; i < slope.length; i++) {
                double weighted = weights[k] * slope[i];
                if (weighted == 0) {
                    continue;
                }
                double[] row = sum[column[i]];
                for (int j = i; j < slope.length; j++) {
                    row[column[j]] += weighted * slope[j];
                }
                sum[size][column[i]] += weighted * r;
            }
        }
        return sum;
    }

    /** Derivatives of the model at a pixel by the shape parameters, from the slopes of the picture itself. */
    private void shapeSlopes(int x, int y, double byExponent, double[] slope) {
        float[] t = picture.data();
        int width = data.width();
        int p = y * width + x;
        double right = 0.5 * (t[p + 1] - t[p - 1]);
        double down = 0.5 * (t[p + width] - t[p - width]);
        double laplacian = t[p + 1] + t[p - 1] + t[p + width] + t[p - width] - 4.0 * t[p];
        double dx = x - parameters[X];
        double dy = y - parameters[Y];
        float[] plain = shade.data();
        // The picture is shading times markings; what of its turn is the shading's turns with the axis.
        double shadeTurn = dx * 0.5 * (plain[p + width] - plain[p - width]) - dy * 0.5 * (plain[p + 1] - plain[p - 1]);
        double turn = dx * down - dy * right;
        double axisTurn = plain[p] > 1e-3f ? shadeTurn * t[p] / plain[p] : turn;
        double blur = parameters[BLUR];
        double radius = parameters[RADIUS];
        slope[X] = -right;
        slope[Y] = -down;
        // A Gaussian obeys the equation of heat; a larger disk is the same picture enlarged, less its larger blur.
        slope[BLUR] = blur * laplacian;
        slope[RADIUS] = -(dx * right + dy * down + blur * slope[BLUR]) / radius;
        slope[NORTH] = axisTurn;
        slope[BELTS] = turn - axisTurn;
        slope[MINNAERT] = byExponent;
        slope[SKY] = 1;
    }
}
