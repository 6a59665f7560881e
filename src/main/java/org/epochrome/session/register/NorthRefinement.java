package org.epochrome.session.register;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.align.Link;
import org.epochrome.align.Shift;
import org.epochrome.align.Similarity;
import org.epochrome.align.Witness;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.job.Progress;
import org.epochrome.session.compare.Comparison;
import org.epochrome.session.compare.Details;
import org.epochrome.session.locate.AxisByMotion;
import org.epochrome.session.locate.Camera;
import org.epochrome.session.locate.ImageOrientation;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.ManualDisks;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/**
 * The north angles of bodies whose limb shows the axis, refined by the detail of frames over which the globe turned far
 * enough. Frames of one camera between meridian flips share one error. It shows in two ways: detail of early and late
 * frames, turned about a wrong axis, lies apart along the pole in proportion to the turn (see {@link AxisByMotion}); and
 * frames before and after a flip lie turned against each other. All north angles are solved for together, with what the
 * limbs say as a prior.
 */
public final class NorthRefinement {
    /** Rotation of the globe between the first and the last frame from which detail can give north better than the limb. */
    private static final double LEAST_TURN_DEG = 4;
    /** The detail's standard error must be this part of the limb's, or less. */
    private static final double BETTER = 0.7;

    private static final int ROUNDS = 3;
    private static final double SETTLED_DEG = 0.005;
    /** By how much a meridian flip may turn a camera; common practice, no source. */
    private static final double FLIP_DEG = 1;
    /** A smaller rotation in addition to the half turn is ignored; the limb's north angle is no more accurate. */
    private static final double ASKEW_DEG = 0.05;
    /** Directions with a larger standard error are not used. */
    private static final double USELESS_TURN_DEG = 0.2;
    /** Smallest standard error assumed for a relative direction. */
    private static final double TURN_FLOOR_DEG = 0.01;
    /** Smallest standard error assumed for a shift of detail. */
    private static final double DETAIL_FLOOR_PX = 0.01;

    private final Recipe recipe;
    private final Schedule schedule;
    private final Turning turning;

    public NorthRefinement(Recipe recipe, Schedule schedule) {
        this.recipe = recipe;
        this.schedule = schedule;
        turning = new Turning(recipe, schedule);
    }

    /** The frames with better north angles; unchanged where detail does not give it better than the limb. */
    public WorkingFrames refined(Details details, WorkingFrames frames, Progress progress) {
        List<FittedDisk> found = frames.disks();
        if (!applies(found)) {
            return frames;
        }
        List<Integer> groups = groups(found);
        int count = 1 + groups.stream().mapToInt(g -> g).max().orElse(0);
        double[] total = new double[count];
        WorkingFrames turned = frames;
        Solution solution = new Solution(List.of(), Double.POSITIVE_INFINITY);
        for (int round = 0; round < ROUNDS; round++) {
            List<Turn> turns = turns(details, turned, groups, progress);
            if (turns.size() < count - 1) {
                return frames;
            }
            boolean first = round == 0 && count > 1;
            // Frames that are turned against each other do not show small shifts.
            List<Link> links = first ? List.of() : new Comparison(details, turned).links(progress);
            solution = solved(turned.disks(), groups, total, turns, links, details.factor());
            double most = 0;
            for (int g = 0; g < count; g++) {
                total[g] += solution.northDeg.get(g);
                most = Math.max(most, Math.abs(solution.northDeg.get(g)));
            }
            turned = frames.at(turned(found, groups, total));
            if (!first && most < SETTLED_DEG) {
                break;
            }
        }
        boolean better =
                solution.sigmaDeg < BETTER * found.get(schedule.reference()).northSigmaDeg();
        boolean askew = count > 1 && Math.abs(total[1] - total[0]) > ASKEW_DEG;
        if (!better && !askew) {
            return frames;
        }
        double sigma = solution.sigmaDeg;
        return turned.map(f -> f.at(f.disk().withNorthSigma(sigma))).warned(sentences(groups, total, sigma));
    }

    private boolean applies(List<FittedDisk> found) {
        boolean mirrored = found.get(schedule.reference()).disk().mirrored();
        ManualDisks held = new ManualDisks(recipe, schedule);
        return recipe.corrections().turn()
                && recipe.alignment().uses(Witness.DETAIL)
                && recipe.setup().northDeg().isEmpty()
                && recipe.body().showsAxis()
                && !ImageOrientation.ringsTellNorth(schedule.aspect())
                && span() > LEAST_TURN_DEG
                && IntStream.range(0, found.size())
                        .allMatch(i -> found.get(i).disk().mirrored() == mirrored
                                && Camera.of(schedule.exposures().get(i), mirrored)
                                        .equals(Camera.of(schedule.referenceExposure(), mirrored))
                                && held.northDeg(i).isEmpty());
    }

    private double span() {
        double[] turned = schedule.exposures().stream()
                .mapToDouble(e -> Math.toDegrees(turning.eastwardRad(e)))
                .sorted()
                .toArray();
        return turned[turned.length - 1] - turned[0];
    }

    /** For each exposure 0 if it lies the same way up as the reference, 1 if a meridian flip lies between. */
    private List<Integer> groups(List<FittedDisk> found) {
        double north = found.get(schedule.reference()).disk().northAngleDeg();
        return found.stream()
                .map(f -> Math.abs(Disk.wrapDeg(f.disk().northAngleDeg() - north)) > 90 ? 1 : 0)
                .toList();
    }

    /** By how much a group's detail is turned against that of the reference's group, counter-clockwise as displayed. */
    private record Turn(int group, double deg, double sigmaDeg) {}

    /** In every band the frames on both sides of the flip that are nearest in time. */
    private List<Turn> turns(Details details, WorkingFrames frames, List<Integer> groups, Progress progress) {
        List<Turn> turns = new ArrayList<>();
        for (String band : Comparison.leads(schedule).keySet()) {
            nearest(band, groups).ifPresent(pair -> {
                Optional<Similarity> found = similarity(details, frames, pair, progress);
                double sigma = found.map(s -> Math.toDegrees(s.turnSigmaRad())).orElse(Double.POSITIVE_INFINITY);
                if (sigma < USELESS_TURN_DEG) {
                    turns.add(new Turn(
                            groups.get(pair.to),
                            Math.toDegrees(found.get().turnRad()),
                            Math.hypot(sigma, TURN_FLOOR_DEG)));
                }
            });
        }
        return turns;
    }

    private static Optional<Similarity> similarity(
            Details details, WorkingFrames frames, Pair pair, Progress progress) {
        List<List<Detail>> alike = details.alike(List.of(
                details.sight(frames.get(pair.from), true, progress),
                details.sight(frames.get(pair.to), true, progress)));
        return DetailWitness.similarity(alike.get(0), alike.get(1));
    }

    private record Pair(int from, int to) {}

    private Optional<Pair> nearest(String band, List<Integer> groups) {
        Optional<Pair> best = Optional.empty();
        Duration least = Duration.ofDays(1);
        for (int i = 0; i < groups.size(); i++) {
            for (int k = 0; k < groups.size(); k++) {
                Exposure one = schedule.exposures().get(i);
                Exposure other = schedule.exposures().get(k);
                Duration apart = Duration.between(one.mid(), other.mid()).abs();
                if (groups.get(i) == 0
                        && groups.get(k) != 0
                        && one.band().name().equals(band)
                        && other.band().name().equals(band)
                        && apart.compareTo(least) < 0) {
                    best = Optional.of(new Pair(i, k));
                    least = apart;
                }
            }
        }
        return best;
    }

    private record Solution(List<Double> northDeg, double sigmaDeg) {}

    /**
     * One step of least squares: what to add to each group's north angle, and by how much the reference's limb lies off
     * along the pole.
     *
     * @param total what was added so far
     */
    private Solution solved(
            List<FittedDisk> fits,
            List<Integer> groups,
            double[] total,
            List<Turn> turns,
            List<Link> links,
            int factor) {
        int n = total.length;
        int reference = schedule.reference();
        Disk disk = fits.get(reference).disk();
        Equations equations = new Equations(n + 1);
        for (Turn turn : turns) {
            double[] row = new double[n + 1];
            row[turn.group] = 1;
            row[0] -= 1;
            equations.add(row, turn.deg, turn.sigmaDeg);
        }
        double[] mean = new double[n + 1];
        double meanTotal = 0;
        for (int g : groups) {
            mean[g] += 1.0 / groups.size();
            meanTotal += total[g] / groups.size();
        }
        equations.add(mean, -meanTotal, Math.max(1e-6, fits.get(reference).northSigmaDeg()));
        for (int g = 0; g < n; g++) {
            double[] row = new double[n + 1];
            row[g] = 1;
            equations.add(row, -total[g], FLIP_DEG);
        }
        double[] own = new double[n + 1];
        own[n] = 1;
        equations.add(own, 0, fits.get(reference).centreSigmaPx());
        double north = Math.toRadians(disk.northAngleDeg());
        double lever =
                (disk.mirrored() ? -1 : 1) * Registration.MEAN_PATH * disk.equatorialRadiusPx() * Math.toRadians(1);
        double here = turning.eastwardRad(schedule.referenceExposure());
        for (int i = 0; i < fits.size(); i++) {
            Shift s = Comparison.against(reference, i, links);
            if (i != reference && s.known()) {
                double[] row = new double[n + 1];
                row[groups.get(i)] +=
                        lever * turning.eastwardRad(schedule.exposures().get(i));
                row[0] -= lever * here;
                row[n] = 1;
                double along = -factor * (s.x() * Math.sin(north) + s.y() * Math.cos(north));
                double sigma = factor * Math.hypot(s.sigmaX() * Math.sin(north), s.sigmaY() * Math.cos(north));
                equations.add(
                        row,
                        along,
                        Math.hypot(
                                Math.hypot(sigma, DETAIL_FLOOR_PX), fits.get(i).centreSigmaPx()));
            }
        }
        return equations.solved(n);
    }

    /** Weighted linear equations, solved by least squares. */
    private static final class Equations {
        private final List<double[]> rows = new ArrayList<>();
        private final List<Double> right = new ArrayList<>();
        private final int unknowns;

        Equations(int unknowns) {
            this.unknowns = unknowns;
        }

        void add(double[] row, double value, double sigma) {
            double[] weighted = new double[unknowns];
            for (int k = 0; k < unknowns; k++) {
                weighted[k] = row[k] / sigma;
            }
            rows.add(weighted);
            right.add(value / sigma);
        }

        /** The first unknowns; errors grow if the equations contradict each other. */
        Solution solved(int wanted) {
            RealMatrix matrix = new Array2DRowRealMatrix(rows.toArray(new double[0][]), false);
            RealVector values =
                    new ArrayRealVector(right.stream().mapToDouble(v -> v).toArray(), false);
            RealMatrix inverse = new CholeskyDecomposition(matrix.transpose().multiply(matrix), 1e-9, 1e-30)
                    .getSolver()
                    .getInverse();
            RealVector solution = inverse.operate(matrix.transpose().operate(values));
            double left = matrix.operate(solution).subtract(values).getNorm();
            double spread = Math.max(1, left / Math.sqrt(Math.max(1, rows.size() - unknowns)));
            double sigma = 0;
            for (int k = 0; k < wanted; k++) {
                sigma = Math.max(sigma, spread * Math.sqrt(inverse.getEntry(k, k)));
            }
            return new Solution(
                    DoubleStream.of(solution.toArray()).limit(wanted).boxed().toList(), sigma);
        }
    }

    private static List<FittedDisk> turned(List<FittedDisk> found, List<Integer> groups, double[] addedDeg) {
        List<FittedDisk> result = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            Disk disk = found.get(i).disk();
            result.add(found.get(i).at(disk.withNorth(Disk.wrapDeg(disk.northAngleDeg() + addedDeg[groups.get(i)]))));
        }
        return result;
    }

    private static List<Message> sentences(List<Integer> groups, double[] addedDeg, double sigmaDeg) {
        List<Message> sentences = new ArrayList<>();
        if (addedDeg.length > 1 && Math.abs(addedDeg[1] - addedDeg[0]) > ASKEW_DEG) {
            sentences.add(Message.of("north.meridianFlip", Math.abs(addedDeg[1] - addedDeg[0])));
        }
        double mean = groups.stream().mapToDouble(g -> addedDeg[g]).average().orElse(0);
        if (Math.abs(mean) > 2 * sigmaDeg) {
            sentences.add(Message.of("north.limbCorrected", mean, sigmaDeg));
        }
        return sentences;
    }
}
