package org.epochrome.disk.fit;

import org.epochrome.disk.model.LimbLawPrior;
import org.epochrome.disk.model.Samples;
import org.epochrome.disk.model.Unknowns;
import org.epochrome.disk.solve.Skyline;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.job.Progress;
import org.epochrome.text.Message;

/** Brings a {@link RingedModel} to its samples by Gauss and Newton's method, steps halved where they overshoot. */
final class RingedGaussNewtonFit {
    private static final int MOST_STEPS = 20;
    private static final int MOST_HALVINGS = 3;
    /** Steps with a choice of pixels and variances of their own. */
    private static final int CHOOSING_STEPS = 3;
    /** Moves that are too small to go on: pixels, and radians at the outer edge. */
    private static final double SETTLED = 0.003;

    private static final double COARSE_SETTLED = 0.03;
    /** Errors that the model does not know of, in blurs. */
    private static final double CENTRE_DOUBT = 0.005;

    private static final double RADIUS_DOUBT = 0.02;
    private static final double NORTH_DOUBT = 0.01;
    private static final ShapeStep STEP = new ShapeStep(0.08, 0.5, 1.4);

    private final Samples samples;
    private final Facets facets;
    private final boolean[] held;
    private final double margin;
    private RingedModel model;
    private double[] sigmas = new double[Unknowns.SHAPE];
    private double residual;
    private double misfit;

    /**
     * @param held which shape parameters stay as they are
     * @param margin of sky around the planet, radii; a coarse fit's if it is not zero
     */
    RingedGaussNewtonFit(Samples samples, Facets facets, RingedModel start, boolean[] held, double margin) {
        this.samples = samples;
        this.facets = facets;
        this.model = start;
        this.held = held;
        this.margin = margin;
    }

    Samples samples() {
        return samples;
    }

    Facets facets() {
        return facets;
    }

    RingedModel model() {
        return model;
    }

    /** Standard errors of the shape parameters; zero for held ones. */
    double[] sigmas() {
        return sigmas;
    }

    /** {@link RingedModel#residual} at the end. */
    double residual() {
        return residual;
    }

    /** Mean squared residual over the variance that was expected. */
    double misfit() {
        return misfit;
    }

    /** @throws DiskNotFound if no solution is found */
    void run(Progress progress) {
        int[] pixels = model.pixels(margin);
        double[] noise = model.variances(pixels);
        for (int step = 0; step < MOST_STEPS; step++) {
            progress.check();
            progress.at(step / (double) MOST_STEPS);
            if (step > 0 && step <= CHOOSING_STEPS) {
                pixels = model.pixels(margin);
                noise = model.variances(pixels);
            }
            double[] weights = model.weights(pixels, noise);
            // Brightnesses come first, for without them nothing tells a shape.
            double[] move = move(pixels, weights, step == 0);
            boolean taken = take(move, pixels, weights, step == 0);
            if (!taken || (step > 1 && settled(move))) {
                break;
            }
        }
        residual = model.residual(pixels);
    }

    private double[] move(int[] pixels, double[] weights, boolean brightnessOnly) {
        Skyline normals = model.normals(pixels, weights);
        int first = facets.layers();
        LimbLawPrior.USUAL.addTo(normals, first, model.shape());
        ShapeStep.expectLittle(normals, first, model.shape(), samples);
        for (int i = 0; i < Unknowns.SHAPE; i++) {
            if (held[i] || (brightnessOnly && i != Unknowns.SKY)) {
                normals.hold(first + i);
            }
        }
        double[] move = normals.solve();
        if (move == null) {
            throw new DiskNotFound(Message.of(
                    "disk.noFitRinged", facets.globe().rings().orElseThrow().planet()));
        }
        misfit = model.misfit(pixels, weights) / pixels.length;
        double[] variances = normals.lastVariances(Unknowns.SHAPE);
        double[] doubts = doubts();
        for (int i = 0; i < Unknowns.SHAPE; i++) {
            sigmas[i] = held[i] ? 0 : Math.hypot(Math.sqrt(variances[i] * Math.max(1, misfit)), doubts[i]);
        }
        return move;
    }

    private double[] doubts() {
        double blur = model.shape()[Unknowns.BLUR];
        double[] doubts = new double[Unknowns.SHAPE];
        doubts[Unknowns.X] = CENTRE_DOUBT * blur;
        doubts[Unknowns.Y] = CENTRE_DOUBT * blur;
        doubts[Unknowns.RADIUS] = RADIUS_DOUBT * blur;
        doubts[Unknowns.NORTH] = NORTH_DOUBT * blur / (facets.globe().extent() * model.shape()[Unknowns.RADIUS]);
        return doubts;
    }

    private boolean settled(double[] move) {
        int first = facets.layers();
        double limit = margin > 0 ? COARSE_SETTLED : SETTLED;
        return Math.abs(move[first + Unknowns.X]) < limit
                && Math.abs(move[first + Unknowns.Y]) < limit
                && Math.abs(move[first + Unknowns.RADIUS]) < limit
                && Math.abs(move[first + Unknowns.NORTH]) * facets.globe().extent() * model.shape()[Unknowns.RADIUS]
                        < limit;
    }

    /** Takes a step, or as much of it as makes the fit better; returns false if none does. */
    private boolean take(double[] move, int[] pixels, double[] weights, boolean free) {
        double before = model.misfit(pixels, weights);
        double part = 1;
        for (int i = 0; i <= MOST_HALVINGS; i++) {
            RingedModel tried = moved(move, part);
            double after = tried.misfit(pixels, weights);
            if (free || after < before * 1.0005) {
                model = tried;
                misfit = after / pixels.length;
                return true;
            }
            part /= 2;
        }
        return false;
    }

    /** The model after a part of a step, held where it has a meaning. */
    private RingedModel moved(double[] move, double part) {
        double[] c = model.coefficients().clone();
        double taken = part * STEP.allowed(move, model.shape());
        for (int i = 0; i < c.length; i++) {
            c[i] += taken * move[i];
        }
        return model.with(STEP.after(model.shape(), move, taken), c);
    }
}
