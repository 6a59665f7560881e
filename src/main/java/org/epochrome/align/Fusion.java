package org.epochrome.align;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Weighs what the limb and the detail say about where the disks lie. The limb knows every frame's disk on its own; the
 * detail knows how frames lie against each other, mostly better. Per axis the corrections {@code e} to the limb's centres
 * minimise {@code sum (e_i / s_i)^2 + sum ((e_to - e_from - d) / t)^2}, with s the limb's and t the detail's standard
 * errors and d the detail's shifts.
 */
public final class Fusion {
    private Fusion() {}

    /**
     * The corrections to the centres found by the limb.
     *
     * @param limbSigmaPx standard error per axis of each frame's centre
     * @param links what the detail says; unknown shifts do not count
     */
    public static List<Shift> corrections(List<Double> limbSigmaPx, List<Link> links) {
        double[][] x = axis(limbSigmaPx, links, Shift::x, Shift::sigmaX);
        double[][] y = axis(limbSigmaPx, links, Shift::y, Shift::sigmaY);
        List<Shift> result = new ArrayList<>();
        for (int i = 0; i < limbSigmaPx.size(); i++) {
            result.add(new Shift(x[0][i], y[0][i], x[1][i], y[1][i]));
        }
        return result;
    }

    /** Corrections along one axis, and their standard errors. */
    private static double[][] axis(
            List<Double> limb, List<Link> links, ToDoubleFunction<Shift> shift, ToDoubleFunction<Shift> sigma) {
        int n = limb.size();
        RealMatrix matrix = new Array2DRowRealMatrix(n, n);
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            matrix.addToEntry(i, i, 1 / (limb.get(i) * limb.get(i)));
        }
        for (Link link : links) {
            if (link.shift().known()) {
                double t = sigma.applyAsDouble(link.shift());
                double w = 1 / (t * t);
                matrix.addToEntry(link.from(), link.from(), w);
                matrix.addToEntry(link.to(), link.to(), w);
                matrix.addToEntry(link.from(), link.to(), -w);
                matrix.addToEntry(link.to(), link.from(), -w);
                right[link.to()] += w * shift.applyAsDouble(link.shift());
                right[link.from()] -= w * shift.applyAsDouble(link.shift());
            }
        }
        CholeskyDecomposition cholesky = new CholeskyDecomposition(matrix, 1e-9, 1e-30);
        RealMatrix inverse = cholesky.getSolver().getInverse();
        double[][] result = new double[2][];
        result[0] =
                cholesky.getSolver().solve(new ArrayRealVector(right, false)).toArray();
        result[1] = new double[n];
        for (int i = 0; i < n; i++) {
            result[1][i] = Math.sqrt(inverse.getEntry(i, i));
        }
        return result;
    }
}
