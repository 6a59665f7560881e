package org.epochrome.disk.fit;

import java.util.Arrays;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FitErrors;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.PassbandWidth;
import org.epochrome.disk.RingLight;
import org.epochrome.disk.Shading;
import org.epochrome.disk.model.DiskModel;
import org.epochrome.disk.model.Markings;
import org.epochrome.disk.model.Samples;
import org.epochrome.disk.model.Unknowns;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.disk.start.Levels;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.SmearModel;
import org.epochrome.image.blur.Wings;
import org.epochrome.job.Progress;
import org.epochrome.text.Message;

/** Solves for the disk in some samples, from a start: which unknowns are free, and what the solution says of the frame. */
final class ModelSolver {
    /** A blur more than this part of the radius is no picture of a disk any more. */
    private static final double MOST_BLUR = 0.5;

    /** Length of a smear, in blurs, from which a limb may show its shape. */
    private static final double LEAST_SMEAR_BLURS = 1;

    /** Cosine of the phase angle below which the lit side tells one end of the axis from the other. */
    static final double CLEAR_PHASE = Math.cos(Math.toRadians(4));

    private final Globe globe;
    private final boolean belted;
    private final boolean mirrored;
    private final SmearModel smears;
    private final KnownDisk known;

    ModelSolver(Globe globe, boolean belted, boolean mirrored, SmearModel smears, KnownDisk known) {
        this.globe = globe;
        this.belted = belted;
        this.mirrored = mirrored;
        this.smears = smears;
        this.known = known;
    }

    /** A solution, and its mean squared residual over the variance that was expected. */
    record Outcome(FittedDisk disk, double misfit) {
        Outcome orBetter(Outcome other) {
            return other.misfit < misfit ? other : this;
        }
    }

    /** Whether the north angle is fitted. */
    boolean northFree() {
        return known.northDeg().isEmpty() && (belted || globe.cosPhase() < CLEAR_PHASE);
    }

    Outcome solve(Samples samples, Levels levels, Disk disk, Shading shading, Markings markings, Progress progress) {
        Disk inner = samples.inward(disk);
        double[] shape = new double[Unknowns.SHAPE];
        shape[Unknowns.X] = inner.x();
        shape[Unknowns.Y] = inner.y();
        shape[Unknowns.RADIUS] = inner.equatorialRadiusPx();
        shape[Unknowns.NORTH] = Math.toRadians(inner.northAngleDeg());
        shape[Unknowns.MINNAERT] = shading.minnaert();
        shape[Unknowns.BRIGHTENING] = shading.brightening();
        shape[Unknowns.BLUR] = samples.blurInward(shading.blurPx());
        boolean[] held = new boolean[Unknowns.SHAPE];
        held[Unknowns.X] = known.place().isPresent();
        held[Unknowns.Y] = known.place().isPresent();
        held[Unknowns.NORTH] = !northFree();
        held[Unknowns.RADIUS] = known.radiusPx().isPresent();
        Arrays.fill(held, Unknowns.WINGS, Unknowns.SHAPE, markings.areCoarse());
        held[Unknowns.BRIGHTENING] = markings.areCoarse();
        held[Unknowns.POLES] = !belted || markings.areCoarse();
        boolean shows = smears.assumed().lengthPx() > LEAST_SMEAR_BLURS * shading.blurPx();
        held[Unknowns.SMEAR_WIDTH] = markings.areCoarse() || !shows;
        held[Unknowns.SMEAR_TILT] = held[Unknowns.SMEAR_WIDTH];
        GaussNewtonFit newton = new GaussNewtonFit(
                new DiskModel(
                        samples,
                        globe,
                        mirrored,
                        smears.binned(samples.bin()),
                        markings,
                        shape,
                        new double[markings.size()]),
                held,
                belted && !markings.areCoarse());
        newton.run(progress);
        return new Outcome(result(samples, levels, newton), newton.misfit());
    }

    private FittedDisk result(Samples samples, Levels levels, GaussNewtonFit newton) {
        DiskModel model = newton.model();
        double[] shape = model.shape();
        double[] sigmas = newton.sigmas();
        Disk disk = samples.outward(model.disk()).withNorth(Math.toDegrees(shape[Unknowns.NORTH]));
        double blur = samples.blurOutward(shape[Unknowns.BLUR]);
        Wings wings = samples.surroundings().wings(shape).scaled(samples.bin());
        if (blur > MOST_BLUR * disk.equatorialRadiusPx()) {
            throw new DiskNotFound(Message.of("disk.blurred"));
        }
        Smear smear = smears.at(shape[Unknowns.SMEAR_WIDTH], shape[Unknowns.SMEAR_TILT]);
        return new FittedDisk(
                disk,
                new Shading(shape[Unknowns.MINNAERT], shape[Unknowns.BRIGHTENING], blur, smear, wings),
                levels.background()
                        + levels.top() * samples.surroundings().skySeen(shape, shape[Unknowns.X], shape[Unknowns.Y]),
                levels.top() * Markings.mean(model.coefficients()) / (1 - wings.spread()),
                levels.noise(),
                new FitErrors(
                        samples.bin() * Math.hypot(sigmas[Unknowns.X], sigmas[Unknowns.Y]) / Math.sqrt(2),
                        samples.bin() * sigmas[Unknowns.RADIUS],
                        Math.toDegrees(sigmas[Unknowns.NORTH]),
                        newton.centreByRadius(),
                        false),
                newton.residual(),
                RingLight.NONE,
                samples.surroundings().skySlope(shape).times(levels.top() / samples.bin()),
                sigmas[Unknowns.SMEAR_WIDTH] > 0
                        ? new PassbandWidth(shape[Unknowns.SMEAR_WIDTH], sigmas[Unknowns.SMEAR_WIDTH])
                        : PassbandWidth.UNKNOWN);
    }
}
