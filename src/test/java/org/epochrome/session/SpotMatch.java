package org.epochrome.session;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.epochrome.image.Plane;

/**
 * How what a moon adds to a result compares with what it adds to the truth: {@code light * truth - light * shift .
 * gradient(truth)} by least squares around it. Shares no code with the engine.
 *
 * @param shiftX how far right of its true place it lies, pixels
 * @param shiftY how far below
 * @param light its light, 1 for the true one
 * @param rest rms of what is left without shift, as a part of the truth's peak
 */
record SpotMatch(double shiftX, double shiftY, double light, double rest) {
    static SpotMatch of(Plane result, Plane truth, double x, double y, double reachPx) {
        int most = (int) Math.pow(2 * reachPx + 2, 2);
        double[][] rows = new double[most][];
        double[] right = new double[most];
        int n = 0;
        double peak = 0;
        for (int row = (int) Math.ceil(y - reachPx); row <= y + reachPx; row++) {
            for (int column = (int) Math.ceil(x - reachPx); column <= x + reachPx; column++) {
                if (Math.hypot(column - x, row - y) <= reachPx) {
                    rows[n] = new double[] {
                        truth.at(column, row),
                        -0.5 * (truth.at(column + 1, row) - truth.at(column - 1, row)),
                        -0.5 * (truth.at(column, row + 1) - truth.at(column, row - 1))
                    };
                    right[n++] = result.at(column, row);
                    peak = Math.max(peak, Math.abs(truth.at(column, row)));
                }
            }
        }
        double[] p = solve(Arrays.copyOf(rows, n), Arrays.copyOf(right, n));
        double squares = 0;
        for (int i = 0; i < n; i++) {
            squares += Math.pow(right[i] - rows[i][0], 2);
        }
        return new SpotMatch(p[1] / p[0], p[2] / p[0], p[0], Math.sqrt(squares / n) / peak);
    }

    private static double[] solve(double[][] rows, double[] right) {
        return new QRDecomposition(new Array2DRowRealMatrix(rows, false))
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
    }

    double off() {
        return Math.hypot(shiftX, shiftY);
    }

    double apart(SpotMatch other) {
        return Math.hypot(shiftX - other.shiftX, shiftY - other.shiftY);
    }

    /** What one plane has more than another. */
    static Plane difference(Plane more, Plane less) {
        Plane difference = more.copy();
        for (int i = 0; i < difference.data().length; i++) {
            difference.data()[i] -= less.data()[i];
        }
        return difference;
    }
}
