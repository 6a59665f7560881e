package org.epochrome.disk.model;

import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;

/**
 * Estimates a globe's limb law from the disk inside its limb: along a parallel brightness changes with the cosines of
 * incidence and emission alone, but for clouds and lands, while it may differ from one parallel to the next. At the limb itself
 * the law is hard to tell from the radius.
 */
final class LimbLawEstimate {
    private static final int BANDS = 60;
    /** Least cosine of emission of the pixels that tell, and distance from the limb in blurs. */
    private static final double LEAST_EMISSION = 0.25;

    private static final double CLEAR_BLURS = 2.5;
    private static final double LEAST_LIGHT = 0.02;
    private static final int ROUNDS = 3;
    /** Weight of the expectation that the law stays, per pixel: without it equations of noise may have no solution. */
    private static final double LEAST_TRUST = 1e-6;
    /** That weight before the sky is fitted, whose slope would be taken for a law. */
    private static final double FIRST_TRUST = 1e-3;
    /** Area over which clouds are alike, square blurs (common practice, no source). */
    private static final double CLOUD_AREA = 30;
    /** Length over which lands are alike, radii (common practice, no source). */
    private static final double LAND = 0.3;
    /**
     * By how much a limb differs from the law of the disk inside; the pixels around a limb share that error, and {@link #SHARED}
     * of them count as one.
     */
    private static final double EXPONENT_SCATTER = 0.05;

    private static final double BRIGHTENING_SCATTER = 0.08;
    /** What a blur as large as the radius would add to that: blurred belts pass for a law. Found on rendered scenes. */
    private static final double BLURRED = 1;

    /** Found on rendered scenes. */
    private static final double SHARED = 25;

    private int count;
    private final int[] band;
    private final double[] logarithm;
    private final double[] byExponent;
    private final double[] byBrightening;
    private final double[] weight;
    /** What is expected of the law whatever the disk shows: whether a limb ends in a step cannot be told if its foot is cut off. */
    private final LimbLawPrior usual;

    private LimbLawEstimate(DiskModel model, Samples samples, Plane even) {
        int size = samples.data().data().length;
        band = new int[size];
        logarithm = new double[size];
        byExponent = new double[size];
        byBrightening = new double[size];
        weight = new double[size];
        usual = samples.cut().isEmpty() ? LimbLawPrior.ATMOSPHERE : LimbLawPrior.USUAL;
        collect(model, samples.data().width(), even);
    }

    private void collect(DiskModel model, int width, Plane even) {
        View view = model.view();
        double[] shape = model.shape();
        double most = 1 - (CLEAR_BLURS * shape[Unknowns.BLUR] + model.smearReach()) / shape[Unknowns.RADIUS];
        double[] law = new double[4];
        for (int p = 0; p < band.length; p++) {
            int x = p % width;
            int y = p / width;
            double pole = view.pole(x, y);
            double side = view.side(x, y);
            double light = model.light(p);
            if (!(light > LEAST_LIGHT)
                    || view.ellipticRadius(pole, side) > most
                    || !Shading.law(view, pole, side, shape[Unknowns.MINNAERT], shape[Unknowns.BRIGHTENING], law)) {
                continue;
            }
            double depth = view.depth(pole, side);
            double bodyX = view.bodyX(pole, depth);
            double bodyZ = view.bodyZ(pole, depth);
            double emission = view.cosEmission(bodyX, side, bodyZ);
            if (emission > LEAST_EMISSION && light > LEAST_LIGHT * even.data()[p]) {
                double latitude = view.graphicLatitude(bodyX, side, bodyZ) / Math.PI + 0.5;
                band[count] = (int) Math.max(0, Math.min(BANDS - 1, latitude * BANDS));
                logarithm[count] = Math.log(light / even.data()[p]);
                byExponent[count] = law[1] / law[0];
                byBrightening[count] = law[2] / law[0];
                weight[count] = 1;
                count++;
            }
        }
    }

    /**
     * The law that the parallels of a model's samples show, together with the usual one.
     *
     * @param even {@link DiskModel#even}
     * @param belted whether the globe has belts along its parallels
     * @param begin whether the sky is still to be fitted
     */
    static LimbLawPrior of(DiskModel model, Samples samples, Plane even, boolean belted, boolean begin) {
        LimbLawEstimate parallels = new LimbLawEstimate(model, samples, even);
        double area = belted
                ? CLOUD_AREA * model.shape()[Unknowns.BLUR] * model.shape()[Unknowns.BLUR]
                : Math.pow(LAND * model.shape()[Unknowns.RADIUS], 2);
        return parallels.law(model.shape(), area, belted, begin ? FIRST_TRUST : LEAST_TRUST);
    }

    private LimbLawPrior law(double[] shape, double area, boolean belted, double trusted) {
        double dk = 0;
        double db = 0;
        double[] m = new double[3];
        double variance = 0;
        for (int round = 0; round < ROUNDS; round++) {
            double[][] means = means();
            double[] sums = new double[5];
            for (int i = 0; i < count; i++) {
                double[] mean = means[band[i]];
                double v = logarithm[i] - mean[1];
                double k = byExponent[i] - mean[2];
                double b = byBrightening[i] - mean[3];
                sums[0] += weight[i] * k * k;
                sums[1] += weight[i] * k * b;
                sums[2] += weight[i] * b * b;
                sums[3] += weight[i] * k * v;
                sums[4] += weight[i] * b * v;
            }
            // Keeps the two apart where the disk tells only their sum.
            double trust = count == 0 ? 1 : trusted * count;
            double kk = sums[0] + trust;
            // Caps of lands would pass for a brightening.
            double bb = sums[2] + (belted ? trust : 1e9);
            double determinant = kk * bb - sums[1] * sums[1];
            dk = (bb * sums[3] - sums[1] * sums[4]) / determinant;
            db = (kk * sums[4] - sums[1] * sums[3]) / determinant;
            m = new double[] {sums[0], sums[1], sums[2]};
            variance = judge(means, dk, db);
        }
        double blurred = BLURRED * shape[Unknowns.BLUR] / shape[Unknowns.RADIUS];
        return belted
                ? combined(shape, dk, db, m, variance * area, blurred * blurred)
                : exponentAlone(shape, dk, variance * area / Math.max(1e-9, m[0]) + blurred * blurred);
    }

    /** Means over each band of latitude: of weights, logarithms and derivatives. */
    private double[][] means() {
        double[][] means = new double[BANDS][4];
        for (int i = 0; i < count; i++) {
            double[] mean = means[band[i]];
            mean[0] += weight[i];
            mean[1] += weight[i] * logarithm[i];
            mean[2] += weight[i] * byExponent[i];
            mean[3] += weight[i] * byBrightening[i];
        }
        for (double[] mean : means) {
            for (int j = 1; j < mean.length; j++) {
                mean[j] /= Math.max(1e-9, mean[0]);
            }
        }
        return means;
    }

    /** Gives pixels of clouds less weight; returns the variance of what the law does not explain. */
    private double judge(double[][] means, double dk, double db) {
        double sum = 0;
        double weights = 0;
        double[] left = new double[count];
        for (int i = 0; i < count; i++) {
            double[] mean = means[band[i]];
            left[i] = logarithm[i] - mean[1] - dk * (byExponent[i] - mean[2]) - db * (byBrightening[i] - mean[3]);
            sum += weight[i] * left[i] * left[i];
            weights += weight[i];
        }
        double variance = sum / Math.max(1e-9, weights);
        for (int i = 0; i < count; i++) {
            weight[i] = 1 / (1 + left[i] * left[i] / (4 * variance + 1e-12));
        }
        return variance;
    }

    /** The measured exponent together with the usual law: lands are alike over so large areas that it counts but once. */
    private static LimbLawPrior exponentAlone(double[] shape, double dk, double variance) {
        LimbLawPrior usual = LimbLawPrior.USUAL;
        double measured = 1 / (variance + EXPONENT_SCATTER * EXPONENT_SCATTER);
        double total = measured + usual.exponents();
        return new LimbLawPrior(
                (measured * (shape[Unknowns.MINNAERT] + dk) + usual.exponents() * usual.minnaert()) / total,
                0,
                total,
                0,
                usual.brightenings());
    }

    /** The measured law with its own scatter and the one by which limbs differ from it, together with the usual law. */
    private LimbLawPrior combined(double[] shape, double dk, double db, double[] m, double scale, double blurred) {
        double a = m[0] / scale;
        double b = m[1] / scale;
        double c = m[2] / scale;
        double determinant = a * c - b * b;
        if (!(scale > 0) || !(determinant > 0)) {
            return usual;
        }
        double kk = c / determinant + EXPONENT_SCATTER * EXPONENT_SCATTER + blurred;
        double kb = -b / determinant;
        double bb = a / determinant + BRIGHTENING_SCATTER * BRIGHTENING_SCATTER + blurred;
        double widened = kk * bb - kb * kb;
        double ia = bb / widened;
        double ib = -kb / widened;
        double ic = kk / widened;
        double exponent = shape[Unknowns.MINNAERT] + dk;
        double brightening = shape[Unknowns.BRIGHTENING] + db;
        double ta = ia + usual.exponents();
        double tc = ic + usual.brightenings();
        double total = ta * tc - ib * ib;
        double right = ia * exponent + ib * brightening + usual.exponents() * usual.minnaert();
        double rightB = ib * exponent + ic * brightening;
        return new LimbLawPrior(
                (tc * right - ib * rightB) / total,
                (ta * rightB - ib * right) / total,
                SHARED * ta,
                SHARED * ib,
                SHARED * tc);
    }
}
