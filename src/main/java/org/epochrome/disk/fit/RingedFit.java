package org.epochrome.disk.fit;

import java.util.Arrays;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FitErrors;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.PassbandWidth;
import org.epochrome.disk.RingLight;
import org.epochrome.disk.Shading;
import org.epochrome.disk.model.LimbLawPrior;
import org.epochrome.disk.model.Samples;
import org.epochrome.disk.model.Unknowns;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.disk.start.DiskStart;
import org.epochrome.disk.start.Levels;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.Wings;
import org.epochrome.job.Progress;
import org.epochrome.text.Message;

/**
 * Finds a ringed planet in a frame by fitting globe and rings together. The rings' edges lie at known distances from the centre, so
 * they tell place, scale and the direction of the axis far better than a limb does; and since the near side of the rings
 * crosses the globe and the far side does not, they also tell which end of the axis is north.
 */
final class RingedFit {
    /** Radii on the pixels of the coarse fit and of the fine one. */
    private static final double COARSE_RADIUS = 30;

    private static final double FINE_RADIUS = 56;
    /** Blur that the samples shall have at least; sharper frames are softened to it. */
    private static final double COARSE_BLUR = 1.4;

    private static final double FINE_BLUR = 1.05;
    /** Blur of a usual image, as a part of the radius. */
    private static final double USUAL_BLUR = 1 / 45.0;
    /** Facets' longest side, sample pixels. */
    private static final double FACET = 0.5;
    /** Distances of zones and of places in the rings, in blurs, and least ones. */
    private static final double LAYER_BLURS = 1.0;

    private static final double LEAST_ZONE = Math.toRadians(2.5);
    private static final double LEAST_RING = 0.012;
    /** Margin of a coarse fit, whose start may be far off, radii. */
    private static final double COARSE_MARGIN = 0.15;
    /** Rms that a model of the planet may leave, in its brightness. */
    private static final double MOST_RESIDUAL = 0.08;

    private final Globe globe;
    private final boolean mirrored;
    private final Smear smear;
    private final KnownDisk known;

    RingedFit(Globe globe, boolean mirrored, Smear smear, KnownDisk known) {
        this.globe = globe;
        this.mirrored = mirrored;
        this.smear = smear;
        this.known = known;
    }

    /** Fits in broad strokes, with north at whichever end of the axis fits better. */
    FittedDisk rough(Plane frame, DiskStart start, Progress progress) {
        RingedGaussNewtonFit best = rough(frame, start, false, progress.part(0, 0.5));
        if (known.northDeg().isEmpty()) {
            RingedGaussNewtonFit turned = rough(frame, start, true, progress.part(0.5, 1));
            best = turned.misfit() < best.misfit() ? turned : best;
        }
        check(best);
        return result(best, start.levels());
    }

    private void check(RingedGaussNewtonFit newton) {
        if (known.place().isEmpty() && newton.residual() > MOST_RESIDUAL) {
            throw new DiskNotFound(
                    Message.of("disk.notRinged", globe.rings().orElseThrow().planet()));
        }
    }

    private RingedGaussNewtonFit rough(Plane frame, DiskStart start, boolean turned, Progress progress) {
        FirstGuess guess =
                FirstGuess.of(start, globe, mirrored, known.northDeg(), turned, known.radiusPx(), USUAL_BLUR);
        int bin = (int) Math.max(1, Math.round(guess.disk().equatorialRadiusPx() / COARSE_RADIUS));
        Shading shading = new Shading(LimbLawPrior.USUAL.minnaert(), guess.blurPx(), smear);
        return descend(
                frame, start.levels(), known.placed(guess.disk()), shading, bin, COARSE_BLUR, COARSE_MARGIN, progress);
    }

    /** Fits finely from what an earlier fit found. */
    FittedDisk fine(Plane frame, Levels levels, FittedDisk earlier, Progress progress) {
        Disk disk = known.applied(earlier.disk());
        int bin = (int) Math.max(1, Math.round(disk.equatorialRadiusPx() / FINE_RADIUS));
        Shading shading =
                new Shading(earlier.shading().minnaert(), earlier.shading().blurPx(), smear);
        RingedGaussNewtonFit newton = descend(frame, levels, disk, shading, bin, FINE_BLUR, 0, progress);
        if (known.northDeg().isEmpty()) {
            check(newton);
        }
        return result(newton, levels);
    }

    private RingedGaussNewtonFit descend(
            Plane frame,
            Levels levels,
            Disk disk,
            Shading shading,
            int bin,
            double leastBlur,
            double margin,
            Progress progress) {
        double blur = shading.blurPx();
        double softening = Math.sqrt(Math.max(0, square(leastBlur * bin) - square(blur)));
        double large = disk.equatorialRadiusPx() * globe.extent();
        double small = disk.equatorialRadiusPx()
                * Math.max(globe.apparentAxisRatio(), globe.extent() * Math.abs(Math.sin(globe.tilt())));
        double cos = Math.cos(Math.toRadians(disk.northAngleDeg()));
        double sin = Math.sin(Math.toRadians(disk.northAngleDeg()));
        Samples samples = Samples.around(
                frame,
                disk,
                Math.hypot(large * cos, small * sin),
                Math.hypot(large * sin, small * cos),
                blur,
                softening,
                levels,
                bin,
                false);
        Disk inner = samples.inward(disk);
        double radius = inner.equatorialRadiusPx();
        double[] shape = new double[Unknowns.SHAPE];
        shape[Unknowns.X] = inner.x();
        shape[Unknowns.Y] = inner.y();
        shape[Unknowns.RADIUS] = radius;
        shape[Unknowns.NORTH] = Math.toRadians(inner.northAngleDeg());
        shape[Unknowns.MINNAERT] = shading.minnaert();
        shape[Unknowns.BLUR] = samples.blurInward(blur);
        double layer = LAYER_BLURS * shape[Unknowns.BLUR] / radius;
        Facets facets =
                new Facets(globe, FACET / radius, Math.max(LEAST_ZONE, 1.5 * layer), Math.max(LEAST_RING, layer));
        double[] coefficients = new double[facets.layers()];
        Arrays.fill(coefficients, 0, facets.zones(), 1);
        Arrays.fill(coefficients, facets.zones(), coefficients.length, RingedModel.USUAL_RINGS);
        boolean[] held = new boolean[Unknowns.SHAPE];
        held[Unknowns.X] = known.place().isPresent();
        held[Unknowns.Y] = known.place().isPresent();
        held[Unknowns.NORTH] = known.northDeg().isPresent();
        held[Unknowns.RADIUS] = known.radiusPx().isPresent();
        held[Unknowns.BRIGHTENING] = true;
        held[Unknowns.SMEAR_WIDTH] = true;
        held[Unknowns.SMEAR_TILT] = true;
        Arrays.fill(held, Unknowns.WINGS, Unknowns.SHAPE, margin > 0);
        Smear coarser = smear.on(0, 1.0 / bin, false);
        RingedGaussNewtonFit newton = new RingedGaussNewtonFit(
                samples,
                facets,
                new RingedModel(samples, facets, mirrored, coarser, shape, coefficients),
                held,
                margin);
        newton.run(progress);
        return newton;
    }

    private FittedDisk result(RingedGaussNewtonFit newton, Levels levels) {
        double[] shape = newton.model().shape();
        double[] sigmas = newton.sigmas();
        Samples samples = newton.samples();
        Facets facets = newton.facets();
        double[] coefficients = newton.model().coefficients();
        Wings wings = samples.surroundings().wings(shape).scaled(samples.bin());
        double mean = facets.meanBrightness(shape[Unknowns.MINNAERT], coefficients);
        double[] light = Arrays.stream(coefficients, facets.zones(), coefficients.length)
                .map(v -> v / mean)
                .toArray();
        return new FittedDisk(
                samples.outward(newton.model().disk()).withNorth(Math.toDegrees(shape[Unknowns.NORTH])),
                new Shading(shape[Unknowns.MINNAERT], 0, samples.blurOutward(shape[Unknowns.BLUR]), smear, wings),
                levels.background()
                        + levels.top() * samples.surroundings().skySeen(shape, shape[Unknowns.X], shape[Unknowns.Y]),
                levels.top() * mean / (1 - wings.spread()),
                levels.noise(),
                new FitErrors(
                        samples.bin() * Math.hypot(sigmas[Unknowns.X], sigmas[Unknowns.Y]) / Math.sqrt(2),
                        samples.bin() * sigmas[Unknowns.RADIUS],
                        Math.toDegrees(sigmas[Unknowns.NORTH])),
                newton.residual(),
                new RingLight(facets.places(), light),
                samples.surroundings().skySlope(shape).times(levels.top() / samples.bin()),
                PassbandWidth.UNKNOWN);
    }

    private static double square(double v) {
        return v * v;
    }
}
