package org.epochrome.session.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.align.Link;
import org.epochrome.align.Shift;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.compare.Comparison;
import org.epochrome.session.compare.Details;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/**
 * The direction of a body's axis from the motion of its detail, for bodies whose disk does not show it. The surface turns
 * about the axis; turned back about a wrong one, detail of early and late frames lies apart along the pole, in proportion
 * to the turn: {@code s_i = a + f R phi_i delta}, with the turn phi of a frame, the radius R, the mean depth f of the disk
 * where detail is compared, and the error delta of the north angle. First all directions are tried on small pictures, then
 * delta is solved for until it vanishes. Of a gibbous body the lit side tells where to begin.
 */
public final class AxisByMotion {
    /** Least turn between the first and the last frame. */
    private static final double LEAST_TURN_DEG = 2;
    /** Steps of the search on small pictures, and of its refinement. */
    private static final double STEP_DEG = 10;

    private static final double FINE_STEP_DEG = 2.5;
    /** Mean depth of the disk where detail is compared, in radii. */
    private static final double DEPTH = 0.8;

    private static final int MOST_ROUNDS = 6;
    private static final double SETTLED_DEG = 0.02;
    /** A change of the angle from which disks are fitted anew: the lit side lies with it. */
    private static final double REFIT_DEG = 0.3;
    /** The best direction must explain so much more than the mean of all. */
    private static final double CLEAR = 1.1;
    /** A direction less sure than this is none. */
    private static final double USELESS_DEG = 3;
    /** Blur on the pixels on which detail is compared. */
    private static final double DETAIL_BLUR_PX = 1;

    private final Recipe recipe;
    private final Schedule schedule;
    private final List<Plane> planes;
    private final DiskFinder finder;
    private final Turning turning;
    private final Memory memory;

    AxisByMotion(Recipe recipe, Schedule schedule, List<Plane> planes, DiskFinder finder, Memory memory) {
        this.memory = memory;
        this.recipe = recipe;
        this.schedule = schedule;
        this.planes = planes;
        this.finder = finder;
        turning = new Turning(recipe, schedule);
    }

    /** The axis; empty if the frames span too little time or their detail does not show it. */
    Optional<KnownNorth> find(Progress progress) {
        if (span() < LEAST_TURN_DEG) {
            return Optional.empty();
        }
        if (recipe.setup().mirroring() != Mirroring.AUTO || !finder.showsMirroring()) {
            return in(recipe.setup().mirroring() == Mirroring.YES, progress).map(Solved::axis);
        }
        // Lit side and motion agree about north in the right sense only.
        return Stream.of(tried(false, progress.part(0, 0.5)), tried(true, progress.part(0.5, 1)))
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(Solved::misfit))
                .map(Solved::axis);
    }

    /** What one sense led to, and how badly the disks fit there. */
    private record Solved(KnownNorth axis, double misfit) {}

    /** A sense that may be the wrong one, in which the disks need not fit at all. */
    private Optional<Solved> tried(boolean mirrored, Progress progress) {
        try {
            return in(mirrored, progress);
        } catch (NoDiskInFrame e) {
            return Optional.empty();
        }
    }

    private Optional<Solved> in(boolean mirrored, Progress progress) {
        List<FittedDisk> rough = finder.rough(planes, mirrored, progress.part(0, 0.2));
        OptionalDouble coarse = finder.showsMirroring()
                ? OptionalDouble.of(byLitSide(rough, mirrored))
                : searched(rough, mirrored, progress.part(0.2, 0.4));
        return coarse.isEmpty()
                ? Optional.empty()
                : solved(coarse.getAsDouble(), rough, mirrored, progress.part(0.4, 1));
    }

    private double span() {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Exposure e : schedule.exposures()) {
            double turned = Math.toDegrees(turning.eastwardRad(e));
            least = Math.min(least, turned);
            most = Math.max(most, turned);
        }
        return most - least;
    }

    /** The fits' mean: of a gibbous body they know the axis roughly by its lit side. */
    private double byLitSide(List<FittedDisk> rough, boolean mirrored) {
        double first = rough.get(schedule.reference()).disk().northAngleDeg();
        double sum = 0;
        for (int i = 0; i < rough.size(); i++) {
            double back = first + Disk.wrapDeg(rough.get(i).disk().northAngleDeg() - carried(first, i, mirrored));
            sum += back;
        }
        return sum / rough.size();
    }

    private OptionalDouble searched(List<FittedDisk> rough, boolean mirrored, Progress progress) {
        SmallFrames small = new SmallFrames(turning, WorkingFrames.of(schedule, planes, rough), memory);
        double best = Double.NEGATIVE_INFINITY;
        double at = Double.NaN;
        double sum = 0;
        int steps = (int) Math.round(360 / STEP_DEG);
        for (int k = 0; k < steps; k++) {
            progress.check();
            progress.at(0.8 * k / steps);
            double score = score(small, STEP_DEG * k, mirrored, progress);
            sum += score;
            if (score > best) {
                best = score;
                at = STEP_DEG * k;
            }
        }
        if (best * steps < CLEAR * sum) {
            return OptionalDouble.empty();
        }
        double middle = at;
        for (double north = middle - STEP_DEG; north <= middle + STEP_DEG; north += FINE_STEP_DEG) {
            double score = score(small, north, mirrored, progress);
            if (score > best) {
                best = score;
                at = north;
            }
        }
        return OptionalDouble.of(at);
    }

    /** How well the exposures' detail agrees if north lies in a direction. */
    private double score(SmallFrames small, double north, boolean mirrored, Progress progress) {
        ImageOrientation.Angle place = new ImageOrientation.Angle(north, mirrored, false);
        Detail reference = small.detail(schedule.reference(), place, place, progress);
        double score = 0;
        for (int i = 0; i < schedule.exposures().size(); i++) {
            if (i != schedule.reference()) {
                ImageOrientation.Angle own = new ImageOrientation.Angle(carried(north, i, mirrored), mirrored, false);
                score += DetailWitness.agreement(reference, small.detail(i, own, place, progress));
            }
        }
        return score;
    }

    private double carried(double north, int index, boolean mirrored) {
        return recipe.setup()
                .mount()
                .carriedNorthDeg(
                        north,
                        schedule.referenceExposure().aspect(),
                        schedule.exposures().get(index).aspect(),
                        mirrored);
    }

    private Optional<Solved> solved(double start, List<FittedDisk> rough, boolean mirrored, Progress progress) {
        double fittedAt = start;
        List<FittedDisk> fits = finder.fine(planes, posed(rough, start, mirrored), progress.part(0, 0.3));
        Optional<KnownNorth> found = Optional.of(axis(start, 0, mirrored));
        for (int round = 0; round < MOST_ROUNDS && found.isPresent(); round++) {
            double north = found.get().northDeg();
            if (Math.abs(Disk.wrapDeg(north - fittedAt)) > REFIT_DEG) {
                fits = finder.fine(planes, posed(fits, north, mirrored), progress.part(0.3, 0.6));
                fittedAt = north;
            }
            found = corrected(
                    north, WorkingFrames.of(schedule, planes, posed(fits, north, mirrored)), progress.part(0.6, 1));
            if (found.isPresent() && Math.abs(Disk.wrapDeg(found.get().northDeg() - north)) < SETTLED_DEG) {
                break;
            }
        }
        double misfit = fits.stream().mapToDouble(f -> Math.log(f.residual())).sum();
        return found.filter(axis -> axis.sigmaDeg() < USELESS_DEG).map(axis -> new Solved(axis, misfit));
    }

    private List<FittedDisk> posed(List<FittedDisk> fits, double north, boolean mirrored) {
        List<FittedDisk> result = new ArrayList<>();
        for (int i = 0; i < fits.size(); i++) {
            Disk disk = fits.get(i).disk();
            result.add(fits.get(i)
                    .at(new Disk(
                            disk.x(), disk.y(), disk.equatorialRadiusPx(), carried(north, i, mirrored), mirrored)));
        }
        return result;
    }

    /** One step: least squares for delta and the offset a that the reference's own place leaves in all. */
    private Optional<KnownNorth> corrected(double north, WorkingFrames frames, Progress progress) {
        int reference = schedule.reference();
        FittedDisk base = frames.reference().disk();
        Details details = new Details(turning, base, DETAIL_BLUR_PX);
        List<Link> links = new Comparison(details, frames).links(progress);
        Disk disk = base.disk();
        double angle = Math.toRadians(north);
        double own = square(base.centreSigmaPx());
        double aa = 1 / own;
        double ad = 0;
        double dd = 0;
        double ra = 0;
        double rd = 0;
        int known = 0;
        for (int i = 0; i < frames.size(); i++) {
            Shift s = Comparison.against(reference, i, links);
            if (i == reference || !s.known()) {
                continue;
            }
            double along = -details.factor() * (s.x() * Math.sin(angle) + s.y() * Math.cos(angle));
            double sigma = details.factor() * Math.hypot(s.sigmaX() * Math.sin(angle), s.sigmaY() * Math.cos(angle));
            double weight = 1 / (square(sigma) + square(frames.get(i).disk().centreSigmaPx()));
            double lever = DEPTH
                    * disk.equatorialRadiusPx()
                    * (turning.eastwardRad(schedule.exposures().get(i))
                            - turning.eastwardRad(schedule.referenceExposure()));
            aa += weight;
            ad += weight * lever;
            dd += weight * lever * lever;
            ra += weight * along;
            rd += weight * lever * along;
            known++;
        }
        double determinant = aa * dd - ad * ad;
        if (known == 0 || !(determinant > 0)) {
            return Optional.empty();
        }
        double delta = (aa * rd - ad * ra) / determinant;
        double sigma = Math.sqrt(aa / determinant);
        int sense = disk.mirrored() ? -1 : 1;
        return Optional.of(
                axis(Disk.wrapDeg(north + sense * Math.toDegrees(delta)), Math.toDegrees(sigma), disk.mirrored()));
    }

    private static KnownNorth axis(double northDeg, double sigmaDeg, boolean mirrored) {
        return new KnownNorth(
                northDeg,
                sigmaDeg,
                mirrored,
                Message.of(mirrored ? "north.byMotionMirrored" : "north.byMotion", northDeg, sigmaDeg));
    }

    private static double square(double v) {
        return v * v;
    }
}
