package org.epochrome.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.epochrome.image.Plane;

/**
 * The search for the shifts, from the coarsest markings to the finest. Unknowns: the predicted frame's shift against the
 * reference, then, with a second regressor, that one's; or, with one regressor and four unknowns, growth and clockwise turn
 * at half the window's width from its middle.
 */
final class ShiftSearch {
    private static final int MOST_STEPS = 12;
    private static final double SETTLED_PX = 0.003;
    /** Beyond this standard error the detail says nothing worth hearing. */
    private static final double USELESS_PX = 0.5;
    /** By how much blocks understate the errors, for what is left is alike across their borders too; found on invented scenes. */
    private static final double INFLATED = 1.25;

    private static final double FARTHEST_PX = 3;
    /** Second derivatives may take off all but this part of what the slopes say; otherwise they are ignored. */
    private static final double LEAST_BENT = 0.3;

    private final List<ScaleLevel> octaves = new ArrayList<>();
    private final double[] start;
    private final double half;

    ShiftSearch(List<Detail> target, List<List<Detail>> regressors, double[] startPx) {
        for (int k = 0; k < target.size(); k++) {
            List<Detail> alike = new ArrayList<>();
            for (List<Detail> r : regressors) {
                alike.add(r.get(k));
            }
            octaves.add(new ScaleLevel(target.get(k), alike, startPx.length));
        }
        start = startPx.clone();
        half = 0.5 * target.get(0).markings().width();
    }

    List<Shift> run() {
        return search().map(this::shifts).orElseGet(this::unknown);
    }

    /**
     * By how much a shift that was found changes if places weigh otherwise, to first order; with one regressor and markings of one
     * size.
     *
     * @param weight of reference and predicted frame alike
     */
    Optional<Shift> changeOf(Shift found, Plane weight) {
        NormalEquations sums = new NormalEquations(2, 0);
        octaves.get(0).weighted(weight).addTo(new double[] {found.x(), found.y()}, sums);
        double[] move = new double[2];
        return solve(sums, move).map(c -> new Shift(move[0], move[1], 0, 0, 0));
    }

    Optional<Similarity> similarity() {
        return search().flatMap(found -> {
            Shift moved = found.shift(0);
            return moved.known()
                    ? Optional.of(new Similarity(
                            moved,
                            found.at.get(2) / half,
                            Math.sqrt(found.covariance.getEntry(2, 2)) / half,
                            -found.at.get(3) / half,
                            Math.sqrt(found.covariance.getEntry(3, 3)) / half))
                    : Optional.empty();
        });
    }

    /** Where the search settled, and the covariance of that. */
    private record Found(List<Double> at, RealMatrix covariance) {
        Shift shift(int first) {
            Shift found = new Shift(
                    at.get(first),
                    at.get(first + 1),
                    Math.sqrt(covariance.getEntry(first, first)),
                    Math.sqrt(covariance.getEntry(first + 1, first + 1)),
                    covariance.getEntry(first, first + 1));
            return Math.max(found.sigmaX(), found.sigmaY()) > USELESS_PX ? Shift.UNKNOWN : found;
        }
    }

    /** Coarse markings lead the way to where the fine ones can be distinguished. */
    private Optional<Found> search() {
        double[] from = start;
        Optional<Found> found = Optional.empty();
        for (int finest = octaves.size() - 1; finest >= 0; finest--) {
            found = settled(octaves.subList(finest, octaves.size()), from);
            from = found.map(f -> f.at.stream().mapToDouble(v -> v).toArray()).orElse(start);
        }
        return found;
    }

    /**
     * Searches; the covariance of the unknowns where the search settles. What is left is alike over unknown lengths, so
     * the errors are those by which the blocks, each larger than those lengths, differ in what they ask for (Huber
     * 1967, Proc. 5th Berkeley Symposium 1, 221; White 1980, Econometrica 48, 817).
     */
    private Optional<Found> settled(List<ScaleLevel> used, double[] from) {
        int n = start.length;
        double[] shift = from.clone();
        for (int step = 0; step < MOST_STEPS; step++) {
            NormalEquations sums = new NormalEquations(n, 0);
            used.forEach(level -> level.addTo(shift, sums));
            double[] move = new double[n];
            Optional<RealMatrix> covariance = solve(sums, move);
            if (covariance.isEmpty()) {
                break;
            }
            double length = 0;
            for (double m : move) {
                length = Math.max(length, Math.abs(m));
            }
            for (int i = 0; i < n; i++) {
                shift[i] += move[i] * (length > 1 ? 1 / length : 1);
                if (Math.abs(shift[i] - start[i]) > FARTHEST_PX) {
                    return Optional.empty();
                }
            }
            if (length < SETTLED_PX) {
                return covariance.map(
                        c -> new Found(DoubleStream.of(shift).boxed().toList(), c));
            }
        }
        return Optional.empty();
    }

    private List<Shift> unknown() {
        return start.length == 2 ? List.of(Shift.UNKNOWN) : List.of(Shift.UNKNOWN, Shift.UNKNOWN);
    }

    private List<Shift> shifts(Found found) {
        return start.length == 2 ? List.of(found.shift(0)) : List.of(found.shift(0), found.shift(2));
    }

    /** The step, and the covariance of what it leads to; empty if the detail says nothing in some direction. */
    private static Optional<RealMatrix> solve(NormalEquations sums, double[] move) {
        int n = move.length;
        RealMatrix matrix = new Array2DRowRealMatrix(n, n);
        RealMatrix blocks = new Array2DRowRealMatrix(n, n);
        RealMatrix bent = new Array2DRowRealMatrix(n, n);
        for (int p = 0; p < n; p++) {
            for (int q = p; q < n; q++) {
                // One datum of a pixel's own noise keeps directions without detail from running away.
                set(matrix, p, q, sums.slopes[p][q] + (p == q ? 1 : 0));
                set(blocks, p, q, sums.blocks[p][q]);
                set(bent, p, q, matrix.getEntry(p, q) + sums.bends[p][q]);
            }
        }
        try {
            RealMatrix inverse = inverse(matrix);
            // Noise in the regressors makes slopes that are none: without the bends each step would fall short.
            RealMatrix sure = clear(bent, matrix) ? inverse(bent) : inverse;
            System.arraycopy(sure.operate(sums.asked), 0, move, 0, n);
            // No surer than if every pixel had noise of its own.
            return Optional.of(sure.multiply(blocks)
                    .multiply(sure)
                    .scalarMultiply(INFLATED * INFLATED)
                    .add(inverse));
        } catch (NonPositiveDefiniteMatrixException e) {
            return Optional.empty();
        }
    }

    /** Whether the second derivatives leave a clear minimum: in every direction a good part of what slopes say. */
    private static boolean clear(RealMatrix bent, RealMatrix slopes) {
        return Arrays.stream(
                        new EigenDecomposition(bent.subtract(slopes.scalarMultiply(LEAST_BENT))).getRealEigenvalues())
                .allMatch(v -> v > 0);
    }

    private static void set(RealMatrix symmetric, int p, int q, double value) {
        symmetric.setEntry(p, q, value);
        symmetric.setEntry(q, p, value);
    }

    private static RealMatrix inverse(RealMatrix matrix) {
        return new CholeskyDecomposition(matrix, 1e-9, 1e-30).getSolver().getInverse();
    }
}
