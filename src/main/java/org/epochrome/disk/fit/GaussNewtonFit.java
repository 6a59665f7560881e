package org.epochrome.disk.fit;

import java.util.stream.IntStream;
import org.epochrome.disk.FitErrors;
import org.epochrome.disk.model.DiskModel;
import org.epochrome.disk.model.PolarHaze;
import org.epochrome.disk.model.SmearPrior;
import org.epochrome.disk.model.Unknowns;
import org.epochrome.disk.solve.Skyline;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.job.Progress;
import org.epochrome.text.Message;

/**
 * Brings a {@link DiskModel} to the samples by Gauss and Newton's method, steps halved where they overshoot. The markings
 * go along as unknowns with a prior, so that the variances of the shape are those with the markings marginalised. Wings next to the
 * core are fitted after all else, if the samples show them.
 */
final class GaussNewtonFit {
    private static final int MOST_STEPS = 25;
    private static final int MOST_HALVINGS = 3;
    /** First steps that may overshoot: a coarse fit starts far off, a fine one without markings. */
    private static final int COARSE_FREE_STEPS = 3;

    private static final int FREE_STEPS = 1;
    /** Steps after which the choice of pixels stays. */
    private static final int CHOOSING_STEPS = 3;
    /** First step that may be lengthened, and by how many times at most. */
    private static final int ACCELERATED_FROM = 4;

    private static final double MOST_EXTRAPOLATION = 5;
    /** Part of its standard error by which a parameter may still move at the end. */
    private static final double SETTLED = 0.3;
    /** Multiple of its standard error by which a parameter may still move where a fit goes to and fro between two choices of outliers. */
    private static final double TOLERATED = 2;
    /** Last move of place and size, pixels, up to which a fit that does not settle is used, with that error. */
    private static final double HARDLY_PX = 0.1;
    /** Move of a parameter, sample pixels, below which a coarse fit has settled. */
    private static final double COARSE_SETTLED = 0.1;
    /**
     * Errors that the model does not know of (limbs that obey no Minnaert, blurs that are not quite a Gaussian) in blurs; from
     * fits to rendered scenes with strong markings.
     */
    private static final double CENTRE_DOUBT = 0.001;

    /** That error of the centre as a part of the smear; from rendered scenes low above the horizon. */
    private static final double SMEAR_DOUBT = 0.0005;

    /** That error in blurs where the whole sky was cut off, and the foot of the limb with it; from rendered scenes cut at 2 to 10 % of the peak. */
    private static final double CUT_DOUBT = 0.15;

    private static final double RADIUS_DOUBT = 0.05;
    /** That error of the north angle, as a part of the flattening. */
    private static final double NORTH_DOUBT = 0.0085;

    /** That error as a part of smear squared over blur, to which a smear widens a limb; from rendered scenes low above the horizon. */
    private static final double NORTH_SMEAR_DOUBT = 0.0012;

    private static final ShapeStep STEP = new ShapeStep(0.1, 0.35, 1.6);

    private static final double MOST_MARKING_MOVE = 1;
    private static final double MOST_MARKING = 4;

    private final boolean[] held;
    private final boolean zoned;
    private final CloseWings closeWings;
    private DiskModel model;
    private double[] sigmas = new double[Unknowns.SHAPE];
    private double residual;
    private FitErrors.CentreByRadius centreByRadius = FitErrors.CentreByRadius.NONE;
    /** The move that the last step's equations asked for, and what was made of it. */
    private double[] newton;

    private double[] made;
    private double misfit;

    /**
     * @param held which shape parameters stay as they are
     * @param zoned whether the markings are expected to follow the parallels
     */
    GaussNewtonFit(DiskModel start, boolean[] held, boolean zoned) {
        model = start;
        this.held = held.clone();
        closeWings = CloseWings.of(start.samples().surroundings(), held);
        closeWings.hold(this.held, true);
        this.zoned = zoned;
    }

    DiskModel model() {
        return model;
    }

    /** Standard errors of the shape parameters; zero for held ones. */
    double[] sigmas() {
        return sigmas;
    }

    /** How far the centre moves with the radius; not at all if that is held. */
    FitErrors.CentreByRadius centreByRadius() {
        return centreByRadius;
    }

    /** {@link org.epochrome.disk.model.ModelResiduals#atLimb} at the end. */
    double residual() {
        return residual;
    }

    /** Mean squared residual over the variance that was expected; far more than 1 if the model does not fit. */
    double misfit() {
        return misfit;
    }

    /** @throws DiskNotFound if no solution is found */
    void run(Progress progress) {
        int[] pixels = new int[0];
        double[] noise = new double[0];
        DiskModel start = model;
        int mostSteps = MOST_STEPS;
        boolean wingsAsked = closeWings.isEmpty();
        for (int step = 0; step < mostSteps; step++) {
            progress.check();
            progress.at(step / (double) mostSteps);
            if (step < CHOOSING_STEPS) {
                if (zoned) {
                    model = model.zoned(step == 0);
                } else if (!model.markings().areCoarse()) {
                    model = model.withExpectedLaw(step == 0);
                }
                model = step == 0 ? model : model.completed();
                pixels = model.pixels();
                noise = model.residuals().variances(pixels);
            }
            double[] weights = model.weights(pixels, noise);
            boolean free = step < (model.markings().areCoarse() ? COARSE_FREE_STEPS : FREE_STEPS);
            double[] move = move(pixels, weights, free);
            boolean last = step == mostSteps - 1;
            boolean settled = step > 0 && !free && settled(move, last ? TOLERATED : SETTLED);
            double[] taking = step < ACCELERATED_FROM ? move : accelerated(move);
            newton = move;
            boolean taken = take(taking, pixels, weights, free);
            if (!taken || settled || (last && hardlyMoves(move))) {
                if (!wingsAsked) {
                    wingsAsked = true;
                    if (showCloseWings(pixels, noise)) {
                        model = start;
                        step = -1;
                        continue;
                    }
                }
                judge(pixels);
                if (!settled) {
                    doubt(move);
                }
                residual = model.residuals().atLimb(pixels);
                return;
            }
        }
        throw new DiskNotFound(Message.of("disk.noConvergence"));
    }

    /** Frees the wings next to the core if the samples show them, otherwise leaves them out; returns which. */
    private boolean showCloseWings(int[] pixels, double[] noise) {
        double[] weights = model.weights(pixels, noise);
        closeWings.hold(held, false);
        Skyline normals = expecting(model.normals(pixels, weights));
        double[] move = normals.solve();
        boolean show = move != null && closeWings.show(normals, move, model.misfit(pixels, weights));
        closeWings.hold(held, !show);
        return show;
    }

    /** Equations with what is expected of the shape, and without what is held. */
    private Skyline expecting(Skyline normals) {
        int first = model.markings().size();
        model.lawPrior().addTo(normals, first, model.shape());
        SmearPrior.addTo(normals, first, model.shape());
        PolarHaze.addTo(normals, first, model.shape());
        ShapeStep.expectLittle(normals, first, model.shape(), model.samples());
        for (int i = 0; i < Unknowns.SHAPE; i++) {
            if (held[i]) {
                normals.hold(first + i);
            }
        }
        return normals;
    }

    private double[] move(int[] pixels, double[] weights, boolean free) {
        Skyline normals = expecting(model.normals(pixels, weights));
        if (free && model.markings().areCoarse()) {
            normals.hold(model.markings().size() + Unknowns.MINNAERT);
        }
        double[] move = normals.solve();
        if (move == null) {
            throw new DiskNotFound(Message.of("disk.noFit"));
        }
        misfit = model.misfit(pixels, weights) / pixels.length;
        expect(normals.lastVariances(Unknowns.SHAPE), Math.max(1, misfit));
        return move;
    }

    private void expect(double[] variances, double times) {
        double[] doubts = doubts();
        for (int i = 0; i < Unknowns.SHAPE; i++) {
            sigmas[i] = held[i] ? 0 : Math.hypot(Math.sqrt(variances[i] * times), doubts[i]);
        }
    }

    /** Standard errors of a fine fit by what it left around the limb, in place of what it was prepared for. */
    private void judge(int[] pixels) {
        if (model.markings().areCoarse()) {
            return;
        }
        double[] noise = model.residuals().shownVariances(pixels);
        Skyline information = expecting(model.information(pixels, model.weights(pixels, noise)));
        if (information.solve() != null) {
            double[][] covariance = information.lastCovariance(Unknowns.SHAPE);
            expect(SmearPrior.widened(covariance), 1);
            double cut =
                    CUT_DOUBT * model.shape()[Unknowns.BLUR] * model.samples().cutPart(model.view());
            sigmas[Unknowns.X] = held[Unknowns.X] ? 0 : Math.hypot(sigmas[Unknowns.X], cut);
            sigmas[Unknowns.Y] = held[Unknowns.Y] ? 0 : Math.hypot(sigmas[Unknowns.Y], cut);
            double[] radius = covariance[Unknowns.RADIUS];
            centreByRadius = held[Unknowns.RADIUS]
                    ? FitErrors.CentreByRadius.NONE
                    : new FitErrors.CentreByRadius(
                            radius[Unknowns.X] / radius[Unknowns.RADIUS], radius[Unknowns.Y] / radius[Unknowns.RADIUS]);
        }
    }

    /**
     * A move lengthened by what the one before it teaches about the slow directions (Anderson 1965, J. ACM 12, 547, with
     * one earlier step), judged by the shape parameters.
     */
    private double[] accelerated(double[] move) {
        int first = move.length - Unknowns.SHAPE;
        double product = 0;
        double square = 0;
        for (int i = 0; i <= Unknowns.NORTH; i++) {
            if (!held[i]) {
                double change = (move[first + i] - newton[first + i]) / sigmas[i];
                product += change * move[first + i] / sigmas[i];
                square += change * change;
            }
        }
        double back = square > 0 ? ShapeStep.clamp(product / square, -MOST_EXTRAPOLATION, 0) : 0;
        double[] result = new double[move.length];
        for (int i = 0; i < move.length; i++) {
            result[i] = move[i] - back * (made[i] + move[i] - newton[i]);
        }
        return result;
    }

    /** A fit that would move on but finds no better place is no surer than that move. */
    private void doubt(double[] move) {
        for (int i = 0; i < Unknowns.SHAPE; i++) {
            sigmas[i] = Math.hypot(sigmas[i], move[model.markings().size() + i]);
        }
    }

    /** Errors that the model does not know of. */
    private double[] doubts() {
        double blur = model.shape()[Unknowns.BLUR];
        double radius = model.shape()[Unknowns.RADIUS];
        double[] doubts = new double[Unknowns.SHAPE];
        double centre = Math.hypot(CENTRE_DOUBT * blur, SMEAR_DOUBT * model.smearLength());
        doubts[Unknowns.X] = centre;
        doubts[Unknowns.Y] = centre;
        doubts[Unknowns.RADIUS] = RADIUS_DOUBT * blur;
        double smear = model.smearLength();
        doubts[Unknowns.NORTH] = Math.hypot(NORTH_DOUBT * blur, NORTH_SMEAR_DOUBT * smear * smear / blur)
                / (radius * Math.max(1e-3, 1 - model.globe().apparentAxisRatio()));
        return doubts;
    }

    /** Whether place and size move so little that a last move is as good as an error. */
    private boolean hardlyMoves(double[] move) {
        int first = model.markings().size();
        return IntStream.rangeClosed(Unknowns.X, Unknowns.RADIUS).allMatch(i -> Math.abs(move[first + i]) < HARDLY_PX);
    }

    private boolean settled(double[] move, double part) {
        int first = model.markings().size();
        boolean coarse = model.markings().areCoarse();
        // Where the place is known, the blur is what is sought.
        if (held[Unknowns.X] && Math.abs(move[first + Unknowns.BLUR]) > part * sigmas[Unknowns.BLUR]) {
            return false;
        }
        for (int i = 0; i <= Unknowns.NORTH; i++) {
            double limit = coarse ? COARSE_SETTLED : part * sigmas[i];
            if (Math.abs(move[first + i]) * (coarse && i == Unknowns.NORTH ? 10 : 1) > limit) {
                return false;
            }
        }
        return true;
    }

    /** Takes a step, or as much of it as makes the fit better; returns false if none does. */
    private boolean take(double[] move, int[] pixels, double[] weights, boolean free) {
        double before = model.misfit(pixels, weights);
        double part = 1;
        for (int i = 0; i <= MOST_HALVINGS; i++) {
            DiskModel tried = moved(move, part);
            if (free || tried.misfit(pixels, weights) < before * 1.001) {
                made = difference(tried, model);
                model = tried;
                return true;
            }
            part /= 2;
        }
        return false;
    }

    private static double[] difference(DiskModel to, DiskModel from) {
        int n = to.coefficients().length;
        double[] d = new double[n + Unknowns.SHAPE];
        for (int i = 0; i < d.length; i++) {
            d[i] = i < n ? to.coefficients()[i] - from.coefficients()[i] : to.shape()[i - n] - from.shape()[i - n];
        }
        return d;
    }

    /** The model after a part of a step, held where it has a meaning. */
    private DiskModel moved(double[] move, double part) {
        double[] c = model.coefficients().clone();
        double taken = part * STEP.allowed(move, model.shape());
        for (int i = 0; i < c.length; i++) {
            double by = ShapeStep.clamp(taken * move[i], -MOST_MARKING_MOVE, MOST_MARKING_MOVE);
            c[i] = ShapeStep.clamp(c[i] + by, -MOST_MARKING, MOST_MARKING);
        }
        return model.with(STEP.after(model.shape(), move, taken), c);
    }
}
