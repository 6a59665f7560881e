package org.epochrome.align;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/** The normal equations: x and y of the first frame's correction, of the second's, and so on, then the causes. */
final class ShiftNetwork {
    /** Part of a statement that others must be able to check. */
    private static final double CHECKED = 1e-3;

    /** How many frames there are, and how many causes of errors that limbs share. */
    record Size(int frames, int causes) {
        int unknowns() {
            return 2 * frames + causes;
        }
    }

    private final List<Statement> all;
    private final boolean[] out;
    private final double least;
    private final RealVector solution;
    private final RealMatrix inverse;

    ShiftNetwork(Size size, List<Statement> all, boolean[] out, double least) {
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
            } else if (s.limb() >= 0) {
                double weight = 1 / (Statement.UNHEARD_PX * Statement.UNHEARD_PX);
                matrix.addToEntry(2 * s.limb(), 2 * s.limb(), weight);
                matrix.addToEntry(2 * s.limb() + 1, 2 * s.limb() + 1, weight);
            }
        }
        CholeskyDecomposition cholesky = new CholeskyDecomposition(matrix, 1e-9, 1e-30);
        solution = cholesky.getSolver().solve(new ArrayRealVector(right, false));
        inverse = cholesky.getSolver().getInverse();
    }

    private static void add(Statement s, double[] weight, RealMatrix matrix, double[] right) {
        for (int p = 0; p < s.terms().size(); p++) {
            double ofX = weight[0] * s.right().get(p) + weight[1] * s.down().get(p);
            double ofY = weight[1] * s.right().get(p) + weight[2] * s.down().get(p);
            right[s.terms().get(p)] += ofX * s.shift().x() + ofY * s.shift().y();
            for (int q = 0; q < s.terms().size(); q++) {
                matrix.addToEntry(
                        s.terms().get(p),
                        s.terms().get(q),
                        ofX * s.right().get(q) + ofY * s.down().get(q));
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

    /** The position of a frame relative to another one. */
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
                double dx = s.shift().x() - sum(s, 0);
                double dy = s.shift().y() - sum(s, 1);
                double[] weight = inverted(left);
                result[k] = Math.sqrt(Math.max(0, weight[0] * dx * dx + 2 * weight[1] * dx * dy + weight[2] * dy * dy));
            }
        }
        return result;
    }

    /** Square of the distance of a statement from what all together say, in the standard errors of another one. */
    double corrected(Statement s, Statement errors) {
        double[] weight = inverted(errors.covariance(least));
        double dx = s.shift().x() - sum(s, 0);
        double dy = s.shift().y() - sum(s, 1);
        return weight[0] * dx * dx + 2 * weight[1] * dx * dy + weight[2] * dy * dy;
    }

    /** How much of a statement's two coordinates others check, 0 to 2. */
    double free(Statement s) {
        double[] weight = inverted(s.covariance(least));
        return 2 - weight[0] * known(s, 0, 0) - 2 * weight[1] * known(s, 0, 1) - weight[2] * known(s, 1, 1);
    }

    private double sum(Statement s, int axis) {
        double sum = 0;
        for (int p = 0; p < s.terms().size(); p++) {
            sum += s.factors(axis).get(p) * solution.getEntry(s.terms().get(p));
        }
        return sum;
    }

    private double known(Statement s, int a, int b) {
        double known = 0;
        for (int p = 0; p < s.terms().size(); p++) {
            for (int q = 0; q < s.terms().size(); q++) {
                known += s.factors(a).get(p)
                        * s.factors(b).get(q)
                        * inverse.getEntry(s.terms().get(p), s.terms().get(q));
            }
        }
        return known;
    }
}
