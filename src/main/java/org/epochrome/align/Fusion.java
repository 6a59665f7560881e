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
 * {@code sum ((e_i - c f_i) / s_i)^2 + sum ((e_to - e_from - d) / t)^2 + c^2}, with s the limb's and t the others' standard
 * errors, d their shifts, and c what errs in all limbs of one cause, in standard errors, which moves each by its f; errors
 * need not lie along the axes.
 *
 * <p>A statement that contradicts the rest by far is left out, the worst first (Baarda 1968, "A testing procedure for use in
 * geodetic networks": each residual over its own standard error). Where two statements contradict each other and no third
 * can tell who errs, the link goes: the limb is fitted to a model that it must resemble, detail may be mistaken for other detail.
 * A limb that does not resemble its model goes instead, if the detail that contradicts it is well measured.
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
    /** Standard error below which detail is well measured: bands that have little in common are not compared so well. */
    private static final double WELL_MEASURED_PX = 0.1;
    /** A frame whose limb does not count is held where it is, but only just. */
    private static final double UNHEARD_PX = 1e3;
    /** Standard error that stands for none. */
    private static final double HELD_PX = 1e-6;

    private Fusion() {}

    /**
     * What came out.
     *
     * @param corrections to the centres found by the limb, with their standard errors
     * @param places the same against the reference's correction: how sure frames lie on each other
     * @param limbsLeftOut whether a frame's limb was left out
     * @param linksLeftOut whether a link was left out; unknown shifts are not
     */
    public record Fused(
            List<Shift> corrections, List<Shift> places, List<Boolean> limbsLeftOut, List<Boolean> linksLeftOut) {}

    /**
     * Weighs the statements.
     *
     * @param limbs what the limb says of each frame
     * @param links what the other witnesses say; unknown shifts do not count
     * @param reference number of the frame that the others are laid on
     */
    public static Fused of(List<Limb> limbs, List<Link> links, int reference) {
        int n = limbs.size();
        int causes = 1 + limbs.stream().mapToInt(Limb::cause).max().orElse(0);
        List<Statement> all = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            all.add(Statement.of(limbs.get(i), i, n));
        }
        links.forEach(link -> all.add(Statement.of(link)));
        boolean[] out = new boolean[all.size()];
        for (int i = 0; i < out.length; i++) {
            out[i] = !all.get(i).shift.known();
        }
        boolean[] unknown = out.clone();
        Size size = new Size(n, causes);
        for (Optional<Integer> worst = worst(size, all, out); worst.isPresent(); worst = worst(size, all, out)) {
            out[worst.get()] = true;
        }
        Network network = new Network(size, all, out, 0);
        List<Shift> corrections = new ArrayList<>();
        List<Shift> places = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            corrections.add(network.correction(i));
            places.add(network.place(i, reference));
        }
        List<Boolean> left = new ArrayList<>();
        for (int i = 0; i < out.length; i++) {
            left.add(out[i] && !unknown[i]);
        }
        return new Fused(
                corrections, places, List.copyOf(left.subList(0, n)), List.copyOf(left.subList(n, left.size())));
    }

    /** How many frames there are, and how many causes of errors that limbs share. */
    private record Size(int frames, int causes) {
        int unknowns() {
            return 2 * frames + causes;
        }
    }

    /**
     * A shift that should equal a sum of unknowns.
     *
     * @param limb the frame whose limb says so; -1 for a link
     * @param misfits whether that limb does not resemble its model
     * @param terms the unknowns' numbers
     * @param right factors of the unknowns in the shift's x
     * @param down the same in y
     */
    private record Statement(
            int limb,
            boolean misfits,
            Shift shift,
            Witness witness,
            List<Integer> terms,
            List<Double> right,
            List<Double> down) {
        static Statement of(Limb limb, int frame, int frames) {
            double sigma = Math.max(HELD_PX, Math.min(UNHEARD_PX, limb.sigmaPx()));
            return new Statement(
                    frame,
                    limb.misfits(),
                    new Shift(
                            0,
                            0,
                            Math.hypot(sigma, limb.ownX()),
                            Math.hypot(sigma, limb.ownY()),
                            limb.ownX() * limb.ownY()),
                    Witness.LIMB,
                    List.of(2 * frame, 2 * frame + 1, 2 * frames + limb.cause()),
                    List.of(1.0, 0.0, -limb.sharedX()),
                    List.of(0.0, 1.0, -limb.sharedY()));
        }

        static Statement of(Link link) {
            return new Statement(
                    -1,
                    false,
                    link.shift(),
                    link.witness(),
                    List.of(2 * link.to(), 2 * link.to() + 1, 2 * link.from(), 2 * link.from() + 1),
                    List.of(1.0, 0.0, -1.0, 0.0),
                    List.of(0.0, 1.0, 0.0, -1.0));
        }

        List<Double> factors(int axis) {
            return axis == 0 ? right : down;
        }

        /** Covariance, no standard error less than a bound unless the centre is held. */
        double[] covariance(double least) {
            double bound = held() ? 0 : least;
            double sx = Math.max(bound, shift.sigmaX());
            double sy = Math.max(bound, shift.sigmaY());
            return new double[] {sx * sx, shift.covariance(), sy * sy};
        }

        /** Whether this is detail, well measured, of the frame of another statement. */
        boolean outvotes(Statement limb) {
            return witness == Witness.DETAIL
                    && Math.max(shift.sigmaX(), shift.sigmaY()) < WELL_MEASURED_PX
                    && terms.contains(2 * limb.limb);
        }

        boolean held() {
            return limb >= 0 && shift.sigmaX() <= HELD_PX;
        }
    }

    /** The statement to leave out next; empty if all agree. */
    private static Optional<Integer> worst(Size size, List<Statement> all, boolean[] out) {
        double[] contradictions = new Network(size, all, out, LEAST_TESTED_PX).contradictions();
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
        Optional<Integer> misfit = suspects.stream()
                .filter(i -> all.get(i).misfits
                        && suspects.stream().anyMatch(k -> all.get(k).outvotes(all.get(i))))
                .max(Comparator.comparing(i -> contradictions[i]));
        if (misfit.isPresent()) {
            return misfit;
        }
        return suspects.stream()
                .max(Comparator.comparing((Integer i) -> all.get(i).witness == Witness.DETAIL ? 1 : 0)
                        .thenComparing(i -> contradictions[i]));
    }

    /** The normal equations: x and y of the first frame's correction, of the second's, and so on, then the causes. */
    private static final class Network {
        private final List<Statement> all;
        private final boolean[] out;
        private final double least;
        private final RealVector solution;
        private final RealMatrix inverse;

        Network(Size size, List<Statement> all, boolean[] out, double least) {
            this.all = all;
            this.out = out;
            this.least = least;
            int n = size.unknowns();
            RealMatrix matrix = new Array2DRowRealMatrix(n, n);
            double[] right = new double[n];
            for (int c = 2 * size.frames(); c < n; c++) {
                matrix.setEntry(c, c, 1);
            }
            for (int k = 0; k < all.size(); k++) {
                Statement s = all.get(k);
                if (!out[k]) {
                    add(s, inverted(s.covariance(least)), matrix, right);
                } else if (s.limb >= 0) {
                    double weight = 1 / (UNHEARD_PX * UNHEARD_PX);
                    matrix.addToEntry(2 * s.limb, 2 * s.limb, weight);
                    matrix.addToEntry(2 * s.limb + 1, 2 * s.limb + 1, weight);
                }
            }
            CholeskyDecomposition cholesky = new CholeskyDecomposition(matrix, 1e-9, 1e-30);
            solution = cholesky.getSolver().solve(new ArrayRealVector(right, false));
            inverse = cholesky.getSolver().getInverse();
        }

        private static void add(Statement s, double[] weight, RealMatrix matrix, double[] right) {
            for (int p = 0; p < s.terms.size(); p++) {
                double ofX = weight[0] * s.right.get(p) + weight[1] * s.down.get(p);
                double ofY = weight[1] * s.right.get(p) + weight[2] * s.down.get(p);
                right[s.terms.get(p)] += ofX * s.shift.x() + ofY * s.shift.y();
                for (int q = 0; q < s.terms.size(); q++) {
                    matrix.addToEntry(s.terms.get(p), s.terms.get(q), ofX * s.right.get(q) + ofY * s.down.get(q));
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
            return answered(new Statement(
                    frame,
                    false,
                    Shift.UNKNOWN,
                    Witness.LIMB,
                    List.of(2 * frame, 2 * frame + 1),
                    List.of(1.0, 0.0),
                    List.of(0.0, 1.0)));
        }

        /** The same less that to another frame's. */
        Shift place(int frame, int reference) {
            return frame == reference
                    ? new Shift(0, 0, 0, 0)
                    : answered(Statement.of(new Link(reference, frame, Shift.UNKNOWN, Witness.LIMB)));
        }

        /** What all together say in a statement's place. */
        private Shift answered(Statement s) {
            return new Shift(
                    sum(s, 0),
                    sum(s, 1),
                    Math.sqrt(Math.max(0, known(s, 0, 0))),
                    Math.sqrt(Math.max(0, known(s, 1, 1))),
                    known(s, 0, 1));
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
                    double dx = s.shift.x() - sum(s, 0);
                    double dy = s.shift.y() - sum(s, 1);
                    double[] weight = inverted(left);
                    result[k] =
                            Math.sqrt(Math.max(0, weight[0] * dx * dx + 2 * weight[1] * dx * dy + weight[2] * dy * dy));
                }
            }
            return result;
        }

        private double sum(Statement s, int axis) {
            double sum = 0;
            for (int p = 0; p < s.terms.size(); p++) {
                sum += s.factors(axis).get(p) * solution.getEntry(s.terms.get(p));
            }
            return sum;
        }

        private double known(Statement s, int a, int b) {
            double known = 0;
            for (int p = 0; p < s.terms.size(); p++) {
                for (int q = 0; q < s.terms.size(); q++) {
                    known += s.factors(a).get(p)
                            * s.factors(b).get(q)
                            * inverse.getEntry(s.terms.get(p), s.terms.get(q));
                }
            }
            return known;
        }
    }
}
