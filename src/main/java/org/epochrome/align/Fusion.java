package org.epochrome.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Weighs what the witnesses say about where the disks lie. The limb knows every frame's disk on its own; detail and physics
 * know how frames lie against each other, mostly better. The corrections {@code e} to the limb's centres minimise
 * {@code sum (e_i / s_i)^2 + sum ((e_to - e_from - d) / t)^2}, with s the limb's and t the others' standard errors and d
 * their shifts; errors need not lie along the axes.
 *
 * <p>A statement that contradicts the rest by far is left out, the worst first (Baarda 1968, "A testing procedure for use in
 * geodetic networks": each residual over its own standard error). Where two statements contradict each other and no third
 * can tell who errs, the link goes: the limb is fitted to a model that it must resemble, detail may be mistaken for other detail.
 */
public final class Fusion {
    /** Standard errors beyond which a statement is wrong rather than unsure. */
    private static final double CONTRADICTS = 5;
    /** For this test no statement is taken to be surer: below, witnesses differ because no model is perfect. */
    private static final double LEAST_TESTED_PX = 0.05;
    /** What cannot be told from the worst statement, as a part of it. */
    private static final double AS_BAD = 0.9;
    /** Part of a statement that others must be able to check. */
    private static final double CHECKED = 1e-3;
    /** A frame whose limb does not count is held where it is, but only just. */
    private static final double UNHEARD_PX = 1e3;
    /** Standard error that stands for none. */
    private static final double HELD_PX = 1e-6;

    private Fusion() {}

    /**
     * What came out.
     *
     * @param corrections to the centres found by the limb, with their standard errors
     * @param limbsLeftOut whether a frame's limb was left out
     * @param linksLeftOut whether a link was left out; unknown shifts are not
     */
    public record Fused(List<Shift> corrections, List<Boolean> limbsLeftOut, List<Boolean> linksLeftOut) {}

    /**
     * Weighs the statements.
     *
     * @param limbSigmaPx standard error per axis of each frame's centre; infinite where the limb shall not count, 0 where
     *     the centre is known and stays
     * @param links what the other witnesses say; unknown shifts do not count
     */
    public static Fused of(List<Double> limbSigmaPx, List<Link> links) {
        int n = limbSigmaPx.size();
        List<Statement> all = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double sigma = Math.max(HELD_PX, Math.min(UNHEARD_PX, limbSigmaPx.get(i)));
            all.add(new Statement(-1, i, new Shift(0, 0, sigma, sigma), Witness.LIMB));
        }
        for (Link link : links) {
            all.add(new Statement(link.from(), link.to(), link.shift(), link.witness()));
        }
        boolean[] out = new boolean[all.size()];
        for (int i = 0; i < out.length; i++) {
            out[i] = !all.get(i).shift.known();
        }
        boolean[] unknown = out.clone();
        for (Optional<Integer> worst = worst(n, all, out); worst.isPresent(); worst = worst(n, all, out)) {
            out[worst.get()] = true;
        }
        Network network = new Network(n, all, out, 0);
        List<Shift> corrections = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            corrections.add(network.correction(i));
        }
        List<Boolean> left = new ArrayList<>();
        for (int i = 0; i < out.length; i++) {
            left.add(out[i] && !unknown[i]);
        }
        return new Fused(corrections, List.copyOf(left.subList(0, n)), List.copyOf(left.subList(n, left.size())));
    }

    /** A limb ({@code from} is -1) or a link. */
    private record Statement(int from, int to, Shift shift, Witness witness) {
        /** Covariance, no standard error less than a bound unless the centre is held. */
        double[] covariance(double least) {
            double bound = held() ? 0 : least;
            double sx = Math.max(bound, shift.sigmaX());
            double sy = Math.max(bound, shift.sigmaY());
            return new double[] {sx * sx, shift.covariance(), sy * sy};
        }

        boolean held() {
            return from < 0 && shift.sigmaX() <= HELD_PX;
        }
    }

    /** The statement to leave out next; empty if all agree. */
    private static Optional<Integer> worst(int n, List<Statement> all, boolean[] out) {
        double[] contradictions = new Network(n, all, out, LEAST_TESTED_PX).contradictions();
        double most = Arrays.stream(contradictions).max().orElse(0);
        if (most < CONTRADICTS) {
            return Optional.empty();
        }
        List<Integer> suspects = new ArrayList<>();
        for (int i = 0; i < contradictions.length; i++) {
            if (contradictions[i] > AS_BAD * most) {
                suspects.add(i);
            }
        }
        return suspects.stream()
                .max(Comparator.comparing((Integer i) -> all.get(i).witness == Witness.DETAIL ? 1 : 0)
                        .thenComparing(i -> contradictions[i]));
    }

    /** The normal equations: x and y of the first frame's correction, of the second's, and so on. */
    private static final class Network {
        private final List<Statement> all;
        private final boolean[] out;
        private final double least;
        private final RealVector solution;
        private final RealMatrix inverse;

        Network(int n, List<Statement> all, boolean[] out, double least) {
            this.all = all;
            this.out = out;
            this.least = least;
            RealMatrix matrix = new Array2DRowRealMatrix(2 * n, 2 * n);
            double[] right = new double[2 * n];
            for (int k = 0; k < all.size(); k++) {
                Statement s = all.get(k);
                if (!out[k]) {
                    add(s, inverted(s.covariance(least)), matrix, right);
                } else if (s.from < 0) {
                    double weight = 1 / (UNHEARD_PX * UNHEARD_PX);
                    matrix.addToEntry(2 * s.to, 2 * s.to, weight);
                    matrix.addToEntry(2 * s.to + 1, 2 * s.to + 1, weight);
                }
            }
            CholeskyDecomposition cholesky = new CholeskyDecomposition(matrix, 1e-9, 1e-30);
            solution = cholesky.getSolver().solve(new ArrayRealVector(right, false));
            inverse = cholesky.getSolver().getInverse();
        }

        private static void add(Statement s, double[] weight, RealMatrix matrix, double[] right) {
            for (int p = 0; p < 2; p++) {
                double pull = weight[p] * s.shift.x() + weight[p + 1] * s.shift.y();
                right[2 * s.to + p] += pull;
                if (s.from >= 0) {
                    right[2 * s.from + p] -= pull;
                }
                for (int q = 0; q < 2; q++) {
                    matrix.addToEntry(2 * s.to + p, 2 * s.to + q, weight[p + q]);
                    if (s.from >= 0) {
                        matrix.addToEntry(2 * s.from + p, 2 * s.from + q, weight[p + q]);
                        matrix.addToEntry(2 * s.from + p, 2 * s.to + q, -weight[p + q]);
                        matrix.addToEntry(2 * s.to + p, 2 * s.from + q, -weight[p + q]);
                    }
                }
            }
        }

        /** The inverse of a symmetric matrix given by xx, xy, yy. */
        private static double[] inverted(double[] m) {
            double determinant = m[0] * m[2] - m[1] * m[1];
            return new double[] {m[2] / determinant, -m[1] / determinant, m[0] / determinant};
        }

        /** The correction to a frame's centre. */
        Shift correction(int frame) {
            int x = 2 * frame;
            int y = x + 1;
            return new Shift(
                    solution.getEntry(x),
                    solution.getEntry(y),
                    Math.sqrt(inverse.getEntry(x, x)),
                    Math.sqrt(inverse.getEntry(y, y)),
                    inverse.getEntry(x, y));
        }

        /** How far each statement lies from what all together say, in standard errors of that distance. */
        double[] contradictions() {
            double[] result = new double[all.size()];
            for (int k = 0; k < result.length; k++) {
                Statement s = all.get(k);
                if (!out[k] && !s.held()) {
                    double[] own = s.covariance(least);
                    double[] left = {
                        own[0] * (1 + CHECKED) - known(s, 0, 0),
                        own[1] * (1 + CHECKED) - known(s, 0, 1),
                        own[2] * (1 + CHECKED) - known(s, 1, 1)
                    };
                    double dx = s.shift.x() - difference(s, 0);
                    double dy = s.shift.y() - difference(s, 1);
                    double[] weight = inverted(left);
                    result[k] =
                            Math.sqrt(Math.max(0, weight[0] * dx * dx + 2 * weight[1] * dx * dy + weight[2] * dy * dy));
                }
            }
            return result;
        }

        private double difference(Statement s, int axis) {
            return solution.getEntry(2 * s.to + axis) - (s.from < 0 ? 0 : solution.getEntry(2 * s.from + axis));
        }

        private double known(Statement s, int p, int q) {
            double known = inverse.getEntry(2 * s.to + p, 2 * s.to + q);
            return s.from < 0
                    ? known
                    : known
                            + inverse.getEntry(2 * s.from + p, 2 * s.from + q)
                            - inverse.getEntry(2 * s.from + p, 2 * s.to + q)
                            - inverse.getEntry(2 * s.to + p, 2 * s.from + q);
        }
    }
}
