package org.epochrome.align;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Normal equations of a search for shifts, and what is needed to say how sure their solution is. Matrices are symmetric;
 * upper triangles are filled.
 */
final class NormalEquations {
    private static final double ROUNDING = 1e-12;

    private final int n;
    /** Weighted products of the slopes. */
    final double[][] slopes;
    /** What is asked for: slopes times what is left unexplained. */
    final double[] asked;
    /** Products of what each block asks for. */
    final double[][] blocks;
    /** What the second derivatives of the prediction take off the first matrix. */
    final double[][] bends;

    /** What each strip along the parallels asks for. */
    private final double[][] strips;

    private final double[] before;

    NormalEquations(int unknowns, int strips) {
        n = unknowns;
        this.strips = new double[strips][n];
        slopes = new double[n][n];
        asked = new double[n];
        blocks = new double[n][n];
        bends = new double[n][n];
        before = new double[n];
    }

    void beginBlock() {
        System.arraycopy(asked, 0, before, 0, n);
    }

    void endBlock() {
        for (int p = 0; p < n; p++) {
            for (int q = p; q < n; q++) {
                blocks[p][q] += (asked[p] - before[p]) * (asked[q] - before[q]);
            }
        }
    }

    void add(double weight, double[] slope, double residual, int strip) {
        for (int p = 0; p < n; p++) {
            for (int q = p; q < n; q++) {
                slopes[p][q] += weight * slope[p] * slope[q];
            }
            asked[p] += weight * slope[p] * residual;
            strips[strip][p] += weight * slope[p] * residual;
        }
    }

    /** Second derivatives xx, xy, yy of what lies at the shift that begins with an unknown. */
    void bend(int first, double[] second) {
        bends[first][first] -= second[0];
        bends[first][first + 1] -= second[1];
        bends[first + 1][first + 1] -= second[2];
    }

    /** Those of a second regressor, which lies at the difference of the two shifts. */
    void bendOfSecond(double[] second) {
        bend(0, second);
        bend(2, second);
        for (int p = 0; p < 2; p++) {
            for (int q = 0; q < 2; q++) {
                bends[p][2 + q] += second[p + q];
            }
        }
    }

    void add(NormalEquations other) {
        for (int p = 0; p < n; p++) {
            for (int q = p; q < n; q++) {
                slopes[p][q] += other.slopes[p][q];
                blocks[p][q] += other.blocks[p][q];
                bends[p][q] += other.bends[p][q];
            }
            asked[p] += other.asked[p];
        }
        for (int k = 0; k < strips.length; k++) {
            for (int p = 0; p < n; p++) {
                strips[k][p] += other.strips[k][p];
            }
        }
    }

    /**
     * Where strips along the parallels differ in what they ask for by more than blocks do, lets that count: what is left of
     * belts is alike all along them.
     */
    void heedStrips() {
        RealMatrix byBlocks = new Array2DRowRealMatrix(n, n);
        RealMatrix byStrips = new Array2DRowRealMatrix(n, n);
        for (int p = 0; p < n; p++) {
            for (int q = 0; q < n; q++) {
                byBlocks.setEntry(p, q, blocks[Math.min(p, q)][Math.max(p, q)]);
                for (double[] strip : strips) {
                    byStrips.addToEntry(p, q, strip[p] * strip[q]);
                }
            }
        }
        RealMatrix root = root(byBlocks, 0.5);
        RealMatrix inverse = root(byBlocks, -0.5);
        RealMatrix ratio = inverse.multiply(byStrips).multiply(inverse);
        // rounding must not make it lopsided
        EigenDecomposition excess =
                new EigenDecomposition(ratio.add(ratio.transpose()).scalarMultiply(0.5));
        RealMatrix more = new Array2DRowRealMatrix(n, n);
        for (int k = 0; k < n; k++) {
            RealVector axis = root.operate(excess.getEigenvector(k));
            more = more.add(axis.outerProduct(axis).scalarMultiply(Math.max(0, excess.getRealEigenvalue(k) - 1)));
        }
        for (int p = 0; p < n; p++) {
            for (int q = p; q < n; q++) {
                blocks[p][q] += more.getEntry(p, q);
            }
        }
    }

    /** A power of a symmetric matrix, nought where it is nought but for rounding. */
    private static RealMatrix root(RealMatrix matrix, double power) {
        EigenDecomposition parts = new EigenDecomposition(matrix);
        RealMatrix sum = new Array2DRowRealMatrix(matrix.getRowDimension(), matrix.getColumnDimension());
        for (int k = 0; k < matrix.getRowDimension(); k++) {
            double value = parts.getRealEigenvalue(k);
            if (value > ROUNDING * matrix.getNorm()) {
                RealVector axis = parts.getEigenvector(k);
                sum = sum.add(axis.outerProduct(axis).scalarMultiply(Math.pow(value, power)));
            }
        }
        return sum;
    }

    /**
     * By what factor blocks differ more than they would if every pixel's rest were its own: coarse markings are alike over many
     * pixels, and would weigh too much against fine ones (McCullagh 1983, Ann. Stat. 11, 59: the dispersion of a
     * quasi-likelihood).
     */
    double dispersion() {
        double sum = 0;
        for (int p = 0; p < n; p++) {
            sum += slopes[p][p] > 0 ? blocks[p][p] / slopes[p][p] / n : 0;
        }
        return Math.max(1, sum);
    }

    /** These equations with all weights smaller by a factor. */
    NormalEquations dividedBy(double factor) {
        return scaled(1 / factor, 1 / (factor * factor), 1 / factor);
    }

    /** These equations for unknowns in pixels that are smaller by a factor. */
    NormalEquations onPixels(double factor) {
        return scaled(1 / (factor * factor), 1 / (factor * factor), 1 / factor);
    }

    private NormalEquations scaled(double slopes, double blocks, double asked) {
        NormalEquations result = new NormalEquations(n, 0);
        for (int p = 0; p < n; p++) {
            for (int q = p; q < n; q++) {
                result.slopes[p][q] = slopes * this.slopes[p][q];
                result.blocks[p][q] = blocks * this.blocks[p][q];
                result.bends[p][q] = slopes * bends[p][q];
            }
            result.asked[p] = asked * this.asked[p];
        }
        return result;
    }
}
