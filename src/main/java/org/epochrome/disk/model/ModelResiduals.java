package org.epochrome.disk.model;

import java.util.Arrays;

/** What a model of a disk leaves of the samples, and how much of that is to be expected. */
public final class ModelResiduals {
    /** Part of the disk's brightness by which a real blur may differ from a Gaussian. */
    private static final double BLUR_DOUBT = 0.002;
    /** That part for coarse markings, which lack most detail. */
    private static final double COARSE_DOUBT = 0.01;
    /** How far from the limb residuals belong to it, blurs. */
    private static final double LIMB_BLURS = 2;
    /** Part of the pixels that may be wrong. */
    private static final double HOT = 0.05;

    /** Depths inside the limb, blurs, between which what a model leaves is judged apart. */
    private static final double[] DEPTHS = {1, 2, 4, 7};
    /** Side of a square of pixels whose detail is alike: detail that the markings lack counts for so much more than its scatter. */
    private static final double ALIKE = 3;

    private final DiskModel model;
    private final int width;

    ModelResiduals(DiskModel model) {
        this.model = model;
        this.width = model.samples().data().width();
    }

    /** Variances of the pixels: noise, doubt about the blur, detail that the markings lack. */
    public double[] variances(int[] pixels) {
        double doubt = model.markings().areCoarse() ? COARSE_DOUBT : BLUR_DOUBT;
        return variances(pixels, doubt * doubt);
    }

    /** Variances of the pixels, with as much doubt about the blur as the residuals around the limb show beyond noise. */
    public double[] shownVariances(int[] pixels) {
        double[] beyond = new double[pixels.length];
        int n = 0;
        for (int p : pixels) {
            double inside = blursInside(p);
            if (inside > -LIMB_BLURS && inside < 1) {
                beyond[n++] = model.residual(p) * model.residual(p)
                        - model.samples().variance(model.samples().data().data()[p]);
            }
        }
        return variances(pixels, Math.max(0, meanWithoutWorst(beyond, n)));
    }

    private double[] variances(int[] pixels, double doubt) {
        double[] scatters = scatters(pixels);
        double[] variances = new double[pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            double brightness = model.samples().data().data()[pixels[i]];
            double inside = blursInside(pixels[i]);
            double detail = Math.min(model.markings().unseen(inside) * brightness, ALIKE * scatters[depth(inside)]);
            double twilight = model.markings().areBelted()
                    ? Twilight.scatter(model.view(), pixels[i] % width, pixels[i] / width)
                    : 0;
            variances[i] = model.samples().variance(brightness) + doubt + detail * detail + twilight * twilight;
        }
        return variances;
    }

    /** Rms of what the model leaves at each depth inside the limb, without the worst pixels. */
    private double[] scatters(int[] pixels) {
        double[][] squares = new double[DEPTHS.length + 1][pixels.length];
        int[] counts = new int[DEPTHS.length + 1];
        for (int p : pixels) {
            int depth = depth(blursInside(p));
            squares[depth][counts[depth]++] = model.residual(p) * model.residual(p);
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
        double[] shape = model.shape();
        double at = model.view()
                .ellipticRadius(model.view().pole(x, y), model.view().side(x, y));
        return (1 - at) * shape[Unknowns.RADIUS] / shape[Unknowns.BLUR];
    }

    /**
     * Rms of what the model leaves within two blurs inside the limb, as a part of the disk's brightness, without the worst
     * pixels, which may be hot.
     */
    public double atLimb(int[] pixels) {
        double[] squares = new double[pixels.length];
        int n = 0;
        for (int p : pixels) {
            double inside = blursInside(p);
            if (inside > 0 && inside < LIMB_BLURS) {
                squares[n++] = model.residual(p) * model.residual(p);
            }
        }
        return Math.sqrt(meanWithoutWorst(squares, n));
    }

    private static double meanWithoutWorst(double[] values, int n) {
        Arrays.sort(values, 0, n);
        int kept = (int) Math.ceil(n * (1 - HOT));
        return Arrays.stream(values, 0, kept).average().orElse(0);
    }
}
