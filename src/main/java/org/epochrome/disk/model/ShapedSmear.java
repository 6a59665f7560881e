package org.epochrome.disk.model;

import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.SmearModel;

/** The smear at some shape parameters of a fit, and how its copies move with them. */
final class ShapedSmear {
    private static final double STEP = 0.01;

    private final Smear smear;
    private final double[] byWidth;
    private final double[] byTilt;

    private ShapedSmear(Smear smear, double[] byWidth, double[] byTilt) {
        this.smear = smear;
        this.byWidth = byWidth;
        this.byTilt = byTilt;
    }

    static ShapedSmear of(SmearModel model, double[] shape) {
        double width = shape[Unknowns.SMEAR_WIDTH];
        double tilt = shape[Unknowns.SMEAR_TILT];
        return new ShapedSmear(
                model.at(width, tilt),
                slopes(model.at(width - STEP, tilt), model.at(width + STEP, tilt)),
                slopes(model.at(width, tilt - STEP), model.at(width, tilt + STEP)));
    }

    private static double[] slopes(Smear from, Smear to) {
        double[] before = from.offsetsPx();
        double[] slopes = to.offsetsPx();
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] = (slopes[i] - before[i]) / (2 * STEP);
        }
        return slopes;
    }

    /** On the samples' pixels. */
    Smear smear() {
        return smear;
    }

    /** Derivatives of the copies' offsets by {@link Unknowns#SMEAR_WIDTH}. */
    double[] byWidth() {
        return byWidth;
    }

    /** Derivatives of the copies' offsets by {@link Unknowns#SMEAR_TILT}. */
    double[] byTilt() {
        return byTilt;
    }
}
