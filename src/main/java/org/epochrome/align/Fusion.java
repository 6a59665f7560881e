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
 * know how frames lie against each other, mostly better. Per axis the corrections {@code e} to the limb's centres minimise
 * {@code sum (e_i / s_i)^2 + sum ((e_to - e_from - d) / t)^2}, with s the limb's and t the others' standard errors and d
 * their shifts.
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
        double[][] x = new Network(n, all, out, true, 0).solved();
        double[][] y = new Network(n, all, out, false, 0).solved();
        List<Shift> corrections = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            corrections.add(new Shift(x[0][i], y[0][i], x[1][i], y[1][i]));
        }
        List<Boolean> left = new ArrayList<>();
        for (int i = 0; i < out.length; i++) {
            left.add(out[i] && !unknown[i]);
        }
        return new Fused(corrections, List.copyOf(left.subList(0, n)), List.copyOf(left.subList(n, left.size())));
    }

    /** A limb ({@code from} is -1) or a link. */
    private record Statement(int from, int to, Shift shift, Witness witness) {
        double value(boolean x) {
            return x ? shift.x() : shift.y();
        }

        double sigma(boolean x, double least) {
            return held() ? HELD_PX : Math.max(least, x ? shift.sigmaX() : shift.sigmaY());
        }

        boolean held() {
            return from < 0 && shift.sigmaX() <= HELD_PX;
        }

        double of(RealVector v) {
            return v.getEntry(to) - (from < 0 ? 0 : v.getEntry(from));
        }
    }

    /** The statement to leave out next; empty if all agree. */
    private static Optional<Integer> worst(int n, List<Statement> all, boolean[] out) {
        double[] x = new Network(n, all, out, true, LEAST_TESTED_PX).contradictions();
        double[] y = new Network(n, all, out, false, LEAST_TESTED_PX).contradictions();
        double[] both = new double[x.length];
        for (int i = 0; i < both.length; i++) {
            both[i] = Math.hypot(x[i], y[i]);
        }
        double most = Arrays.stream(both).max().orElse(0);
        if (most < CONTRADICTS) {
            return Optional.empty();
        }
        List<Integer> suspects = new ArrayList<>();
        for (int i = 0; i < both.length; i++) {
            if (both[i] > AS_BAD * most) {
                suspects.add(i);
            }
        }
        return suspects.stream()
                .max(Comparator.comparing((Integer i) -> all.get(i).witness == Witness.DETAIL ? 1 : 0)
                        .thenComparing(i -> both[i]));
    }

    /** The normal equations along one axis. */
    private static final class Network {
        private final List<Statement> all;
        private final boolean[] out;
        private final boolean x;
        private final double least;
        private final RealVector solution;
        private final RealMatrix inverse;

        Network(int n, List<Statement> all, boolean[] out, boolean x, double least) {
            this.all = all;
            this.out = out;
            this.x = x;
            this.least = least;
            RealMatrix matrix = new Array2DRowRealMatrix(n, n);
            double[] right = new double[n];
            for (int k = 0; k < all.size(); k++) {
                Statement s = all.get(k);
                if (out[k]) {
                    if (s.from < 0) {
                        matrix.addToEntry(s.to, s.to, 1 / (UNHEARD_PX * UNHEARD_PX));
                    }
                    continue;
                }
                double w = 1 / square(s.sigma(x, least));
                matrix.addToEntry(s.to, s.to, w);
                right[s.to] += w * s.value(x);
                if (s.from >= 0) {
                    matrix.addToEntry(s.from, s.from, w);
                    matrix.addToEntry(s.from, s.to, -w);
                    matrix.addToEntry(s.to, s.from, -w);
                    right[s.from] -= w * s.value(x);
                }
            }
            CholeskyDecomposition cholesky = new CholeskyDecomposition(matrix, 1e-9, 1e-30);
            solution = cholesky.getSolver().solve(new ArrayRealVector(right, false));
            inverse = cholesky.getSolver().getInverse();
        }

        /** Corrections and their standard errors. */
        double[][] solved() {
            double[] sigma = new double[solution.getDimension()];
            for (int i = 0; i < sigma.length; i++) {
                sigma[i] = Math.sqrt(inverse.getEntry(i, i));
            }
            return new double[][] {solution.toArray(), sigma};
        }

        /** How far each statement lies from what all together say, in standard errors of that distance. */
        double[] contradictions() {
            double[] result = new double[all.size()];
            for (int k = 0; k < result.length; k++) {
                Statement s = all.get(k);
                if (!out[k] && !s.held()) {
                    double variance = square(s.sigma(x, least));
                    double known = inverse.getEntry(s.to, s.to);
                    if (s.from >= 0) {
                        known += inverse.getEntry(s.from, s.from) - 2 * inverse.getEntry(s.from, s.to);
                    }
                    double checked = 1 - known / variance;
                    if (checked > CHECKED) {
                        result[k] = Math.abs(s.value(x) - s.of(solution)) / Math.sqrt(variance * checked);
                    }
                }
            }
            return result;
        }

        private static double square(double v) {
            return v * v;
        }
    }
}
