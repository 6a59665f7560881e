package org.epochrome.disk;

import org.epochrome.image.Gaussian;
import org.epochrome.image.Plane;
import org.epochrome.image.RowRuns;
import org.epochrome.image.Smear;

/** The {@link Layers} of a disk's picture, blurred and smeared as far as they are asked for. */
final class BlurredLayers {
    private final Plane[] layers;
    private final int rings;
    private final double blurPx;
    private final Smear smear;
    private final RowRuns runs;
    private final float[] moment;
    private boolean all;

    /**
     * @param sharp as {@link Layers#sharp} makes them, which become these
     * @param runs the pixels that matter
     */
    BlurredLayers(Plane[] sharp, double blurPx, Smear smear, RowRuns runs) {
        layers = sharp;
        rings = sharp.length - 3;
        this.blurPx = blurPx;
        this.smear = smear;
        this.runs = runs;
        Plane round = Gaussian.blur(layers[rings], blurPx, runs);
        layers[rings] = smear.of(round, runs);
        moment = smear.moment(round, runs).data();
    }

    float[] picture() {
        return layers[rings].data();
    }

    /** What a longer smear would change. */
    float[] moment() {
        return moment;
    }

    /** The picture times each ring's weight, then the picture, then its derivatives by exponent and brightening. */
    Plane[] all() {
        for (int i = 0; !all && i < layers.length; i++) {
            if (i != rings) {
                layers[i] = smear.of(Gaussian.blur(layers[i], blurPx, runs), runs);
            }
        }
        all = true;
        return layers;
    }
}
