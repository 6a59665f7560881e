package org.epochrome.disk.model;

import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.RowRuns;

/** The {@link Layers} of a disk's picture, blurred and smeared as far as they are asked for. */
final class BlurredLayers {
    private final Plane[] layers;
    private final int rings;
    private final double blurPx;
    private final ShapedSmear smear;
    private final RowRuns runs;
    private final Plane round;
    private float[][] moments = new float[0][];
    private boolean all;

    /**
     * @param sharp as {@link Layers#sharp} makes them, which become these
     * @param runs the pixels that matter
     */
    BlurredLayers(Plane[] sharp, double blurPx, ShapedSmear smear, RowRuns runs) {
        layers = sharp;
        rings = sharp.length - 3;
        this.blurPx = blurPx;
        this.smear = smear;
        this.runs = runs;
        round = Gaussian.blur(layers[rings], blurPx, runs);
        layers[rings] = smear.smear().of(round, runs);
    }

    float[] picture() {
        return layers[rings].data();
    }

    /** The picture times each ring's weight, then the picture, then its derivatives by exponent and brightening. */
    Plane[] all() {
        for (int i = 0; !all && i < layers.length; i++) {
            if (i != rings) {
                layers[i] = smear.smear().of(Gaussian.blur(layers[i], blurPx, runs), runs);
            }
        }
        if (!all) {
            moments =
                    new float[][] {moment(smear.smear().offsetsPx()), moment(smear.byWidth()), moment(smear.byTilt())};
        }
        all = true;
        return layers;
    }

    /**
     * The mean of the smear's copies, each times its offset, times its derivative by the passband's width, and times that by the
     * spectrum's tilt; after {@link #all}.
     */
    float[][] moments() {
        return moments;
    }

    private float[] moment(double[] weights) {
        return smear.smear().moment(round, runs, weights).data();
    }
}
