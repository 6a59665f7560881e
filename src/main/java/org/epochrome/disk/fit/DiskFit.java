package org.epochrome.disk.fit;

import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.model.LimbLawPrior;
import org.epochrome.disk.model.Markings;
import org.epochrome.disk.model.Samples;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.disk.start.DiskStart;
import org.epochrome.disk.start.Levels;
import org.epochrome.disk.start.LimbEdge;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.SmearModel;
import org.epochrome.job.Progress;
import org.epochrome.text.Message;

/**
 * Finds the disk in a frame by fitting a forward model, a limb-darkened, phase-lit, blurred spheroid with markings: first
 * all over the disk in broad strokes, then finely around the limb. Saturn is fitted together with its rings, by a model of
 * its own ({@link RingedFit}).
 */
public final class DiskFit {
    /** Radius on the pixels of the coarse fit. */
    private static final double COARSE_RADIUS = 40;
    /** What is looked at around a disk whose place is known, radii. */
    private static final double PATCH_MARGIN = 0.15;
    /** Softening of the coarse fit's pixels, which are too large for the frame's blur. */
    private static final double COARSE_SOFTNESS = 0.8;
    /** Usual least radius on the pixels of the fine fit, */
    private static final double FINE_RADIUS = 120;
    /** Blur that stays when a frame is binned for its blur's sake. */
    private static final double BINNED_BLUR = 1.3;
    /** Blur that the fine fit's pixels shall have at least; sharper frames are softened to it. */
    private static final double SAMPLED_BLUR = 0.95;
    /** Part of that below which an earlier fit's blur says only that the frame is sharp. */
    private static final double TOLD_BLUR = 0.8;
    /** Blur on the fine fit's pixels below which it is done again, on softer ones. */
    private static final double LEAST_SAMPLED_BLUR = 0.75;
    /** Part of the disk's brightness by which its model may miss it near the limb. */
    private static final double MOST_RESIDUAL = 0.08;

    /** Usual blurs of planets' images and strong ones, as parts of the radius (common practice, no source). */
    private static final double USUAL_BLUR = 1 / 60.0;

    private static final double STRONG_BLUR = 1 / 18.0;
    /** A coarse fit's misfit from which on another start is tried. */
    private static final double COARSE_MISFIT = 5;

    private final Globe globe;
    private final boolean belted;
    private final boolean mirrored;
    private final SmearModel smears;
    private final KnownDisk known;

    /**
     * @param globe aspect of the body at the middle of the recording
     * @param belted whether the body is a flattened, belted one, whose north angle can be fitted
     * @param mirrored whether the frame is mirrored
     * @param smears how dispersion smears the frame's band
     * @param northDeg north angle if known, else it is fitted from flattening and lit side, up to 180 degrees if the
     *     phase does not show which end is which; bodies that show neither keep the angle of the first guess
     * @param radiusPx equatorial radius if known, else it is fitted
     */
    public DiskFit(
            Globe globe,
            boolean belted,
            boolean mirrored,
            SmearModel smears,
            OptionalDouble northDeg,
            OptionalDouble radiusPx) {
        this(globe, belted, mirrored, smears, new KnownDisk(northDeg, radiusPx, Optional.empty()));
    }

    /** A fit with a smear that is known exactly. */
    public DiskFit(
            Globe globe,
            boolean belted,
            boolean mirrored,
            Smear smear,
            OptionalDouble northDeg,
            OptionalDouble radiusPx) {
        this(globe, belted, mirrored, SmearModel.exactly(smear), northDeg, radiusPx);
    }

    private DiskFit(Globe globe, boolean belted, boolean mirrored, SmearModel smears, KnownDisk known) {
        this.globe = globe;
        this.belted = belted;
        this.mirrored = mirrored;
        this.smears = smears;
        this.known = known;
    }

    /**
     * The fit with a centre that is known. If the radius is known too, only a patch there is looked at, and the disk is
     * believed to be one, however little it looks like it.
     *
     * @param x pixels
     * @param y pixels
     */
    public DiskFit centredAt(double x, double y) {
        Optional<KnownDisk.Place> place = Optional.of(new KnownDisk.Place(x, y));
        return new DiskFit(globe, belted, mirrored, smears, new KnownDisk(known.northDeg(), known.radiusPx(), place));
    }

    /** The fit with the equatorial radius known. */
    public DiskFit withRadius(double knownPx) {
        return new DiskFit(
                globe,
                belted,
                mirrored,
                smears,
                new KnownDisk(known.northDeg(), OptionalDouble.of(knownPx), known.place()));
    }

    /**
     * Fits the disk.
     *
     * @throws DiskNotFound if there is no whole disk in the frame
     */
    public FittedDisk fit(Plane frame, Progress progress) {
        DiskStart start = start(frame);
        if (globe.ringed()) {
            FittedDisk found = ringed().rough(frame, start, progress.part(0, 0.4));
            return ringed().fine(frame, start.levels(), found, progress.part(0.4, 1));
        }
        FittedDisk found = coarse(frame, start, progress.part(0, 0.4));
        return fine(frame, start.levels(), found, binFor(found), progress.part(0.4, 1));
    }

    /**
     * Fits the disk in broad strokes: good enough to start from.
     *
     * @throws DiskNotFound if there is no whole disk in the frame
     */
    public FittedDisk rough(Plane frame, Progress progress) {
        DiskStart start = start(frame);
        return globe.ringed() ? ringed().rough(frame, start, progress) : coarse(frame, start, progress);
    }

    private DiskStart start(Plane frame) {
        if (known.place().isEmpty() || known.radiusPx().isEmpty()) {
            return DiskStart.of(frame);
        }
        double reach = globe.extent() + PATCH_MARGIN;
        KnownDisk.Place place = known.place().get();
        return DiskStart.around(
                frame, place.x(), place.y(), reach * known.radiusPx().getAsDouble());
    }

    private FittedDisk coarse(Plane frame, DiskStart start, Progress progress) {
        ModelSolver.Outcome best = coarse(frame, start, USUAL_BLUR, false, progress.part(0, 0.5));
        if (solver().northFree() && globe.cosPhase() < ModelSolver.CLEAR_PHASE) {
            best = best.orBetter(coarse(frame, start, USUAL_BLUR, true, progress.part(0.5, 0.75)));
        }
        if (best.misfit() > COARSE_MISFIT) {
            best = best.orBetter(coarse(frame, start, STRONG_BLUR, false, progress.part(0.75, 0.9)));
        }
        Optional<LimbEdge> edge = edge(frame, start.levels(), best.disk().disk());
        if (edge.isPresent() && !edge.get().agrees(best.disk().disk(), smearReach())) {
            best = best.orBetter(coarse(frame, start.levels(), edge.get(), progress.part(0.9, 1)));
        }
        return best.disk();
    }

    /** The steepest edge around a disk; none where the centre is known. */
    private Optional<LimbEdge> edge(Plane frame, Levels levels, Disk near) {
        return known.place().isPresent()
                ? Optional.empty()
                : LimbEdge.of(
                        frame,
                        levels,
                        globe,
                        known.applied(near),
                        known.radiusPx().isPresent());
    }

    private ModelSolver.Outcome coarse(Plane frame, Levels levels, LimbEdge edge, Progress progress) {
        double blur = Math.max(1, USUAL_BLUR * edge.disk().equatorialRadiusPx());
        Shading shading = new Shading(LimbLawPrior.USUAL.minnaert(), blur, smears.assumed());
        return coarse(frame, levels, edge.disk(), shading, progress);
    }

    /**
     * Fits the disk anew, from where the light's edge around an earlier fit is steepest.
     *
     * @throws DiskNotFound if there is no whole disk in the frame, or no edge
     */
    public FittedDisk refitFromEdge(Plane frame, FittedDisk earlier, Progress progress) {
        Levels levels = start(frame).levels();
        LimbEdge edge =
                edge(frame, levels, earlier.disk()).orElseThrow(() -> new DiskNotFound(Message.of("disk.littleLimb")));
        FittedDisk found = coarse(frame, levels, edge, progress.part(0, 0.4)).disk();
        FittedDisk near = edge.agrees(found.disk(), smearReach()) ? found : found.at(known.applied(edge.disk()));
        return fine(frame, levels, near, binFor(near), progress.part(0.4, 1));
    }

    /** Whether an edge of the light lies about where a fit puts the limb. */
    public boolean edgeAgrees(Plane frame, FittedDisk fit) {
        return edge(frame, Levels.of(fit), fit.disk())
                .map(e -> e.agrees(fit.disk(), smearReach()))
                .orElse(true);
    }

    /**
     * Fits again from what an earlier fit found, with this fit's constraints.
     *
     * @throws DiskNotFound if there is no whole disk in the frame
     */
    public FittedDisk refit(Plane frame, FittedDisk earlier, Progress progress) {
        Levels levels = Levels.of(earlier);
        return globe.ringed()
                ? ringed().fine(frame, levels, earlier, progress)
                : fine(frame, levels, earlier, binFor(earlier), progress);
    }

    /**
     * Fits again in broad strokes from what an earlier fit found, with the smear that one did not know of.
     *
     * @throws DiskNotFound if there is no whole disk in the frame
     */
    public FittedDisk refitSmeared(Plane frame, FittedDisk earlier, Progress progress) {
        if (smears.assumed() == Smear.NONE || globe.ringed()) {
            return earlier;
        }
        Shading shading =
                new Shading(earlier.shading().minnaert(), earlier.shading().blurPx(), smears.assumed());
        return coarse(frame, Levels.of(earlier), known.applied(earlier.disk()), shading, progress)
                .disk();
    }

    private ModelSolver solver() {
        return new ModelSolver(globe, belted, mirrored, smears, known);
    }

    private RingedFit ringed() {
        return new RingedFit(globe, mirrored, smears.assumed(), known);
    }

    private double smearReach() {
        return smears.assumed().farthestPx();
    }

    private ModelSolver.Outcome coarse(Plane frame, DiskStart start, double blur, boolean turned, Progress progress) {
        FirstGuess guess = FirstGuess.of(start, globe, mirrored, known.northDeg(), turned, known.radiusPx(), blur);
        Shading shading = new Shading(LimbLawPrior.USUAL.minnaert(), guess.blurPx(), smears.assumed());
        return coarse(frame, start.levels(), known.placed(guess.disk()), shading, progress);
    }

    private ModelSolver.Outcome coarse(Plane frame, Levels levels, Disk disk, Shading shading, Progress progress) {
        int bin = (int) Math.max(1, Math.round(disk.equatorialRadiusPx() / COARSE_RADIUS));
        Samples samples = Samples.around(frame, disk, shading.blurPx(), COARSE_SOFTNESS * bin, levels, bin);
        return solver().solve(samples, levels, disk, shading, Markings.coarse(), progress);
    }

    private static int binFor(FittedDisk fitted) {
        long byBlur = (long) (fitted.shading().blurPx() / BINNED_BLUR);
        return (int) Math.max(Math.max(1, byBlur), Math.round(fitted.disk().equatorialRadiusPx() / FINE_RADIUS));
    }

    private FittedDisk fine(Plane frame, Levels levels, FittedDisk earlier, int bin, Progress progress) {
        Disk disk = known.applied(earlier.disk());
        double blur = earlier.shading().blurPx();
        Shading shading = new Shading(earlier.shading().minnaert(), blur, smears.assumed());
        // A coarse fit cannot tell how sharp a sharp frame is.
        double told = blur < TOLD_BLUR * SAMPLED_BLUR * bin ? 0 : blur;
        double softening = Math.sqrt(Math.max(0, square(SAMPLED_BLUR * bin) - square(told)));
        Samples samples = Samples.around(frame, disk, blur, softening, levels, bin);
        Markings markings = Markings.fine(disk.equatorialRadiusPx(), Math.max(blur, SAMPLED_BLUR * bin), belted);
        FittedDisk found = solver().solve(samples, levels, disk, shading, markings, progress)
                .disk();
        if (known.place().isEmpty() && found.residual() > MOST_RESIDUAL) {
            throw new DiskNotFound(Message.of("disk.otherObject"));
        }
        return Math.hypot(found.shading().blurPx(), softening) < LEAST_SAMPLED_BLUR * bin
                ? fine(frame, levels, found, bin, progress)
                : found;
    }

    private static double square(double v) {
        return v * v;
    }
}
