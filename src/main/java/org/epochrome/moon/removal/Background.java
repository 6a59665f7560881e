package org.epochrome.moon.removal;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.moon.fit.MoonField;

/**
 * The clouds below a companion by what other frames, of any band, saw there. How the bands go together is learnt around the
 * companion: with y the clouds of the frame and x those of the others, each less a smooth surface, the best linear guess is
 *
 * <pre>y = S_yx (S_xx + D)^-1 x,      D = diag(doubt^2) + r 4 pi blur^2 / weight,</pre>
 *
 * S being their covariances. What is uncertain counts little, and where bands have nothing in common nothing is guessed: the
 * last term expects the coefficients to be 0 ± 1 before anything is seen; r is the variance that the guess leaves.
 */
final class Background {
    /** Powers of the place in the smooth surface's terms. */
    private static final int[][] TERMS = {{0, 0}, {0, 1}, {1, 0}, {0, 2}, {1, 1}, {2, 0}};
    /** Cover, and standard error, above which a pixel does not show how the bands are correlated. */
    private static final double MOST_COVER = 0.02;

    private static final double MOST_DOUBT = 0.01;
    private static final double LEAST_LIGHT = 0.3;
    private static final double LEAST_VARIANCE = 1e-9;
    /** Pixels that tell so many times more than there are terms. */
    private static final double ENOUGH = 5;

    private static final int REFINEMENTS = 3;

    private final MoonField field;
    private final Region window;
    private final List<SurfaceSighting> sights;
    private final double[] weight;
    private final double[][] terms;
    /** Clouds in the others and, last, in the frame. */
    private final double[][] clouds;

    private final double weights;
    private double[][] covariance;

    /**
     * Learns how the bands go together.
     *
     * @param field the frame without companions
     * @param cover how much of each pixel of the window companions covered
     * @param sights what others saw in the window
     */
    Background(MoonField field, Region window, Plane cover, List<SurfaceSighting> sights) {
        this.field = field;
        this.window = window;
        this.sights = sights;
        int pixels = window.width() * window.height();
        weight = new double[pixels];
        terms = new double[pixels][TERMS.length];
        clouds = new double[sights.size() + 1][pixels];
        double sum = 0;
        for (int p = 0; p < pixels; p++) {
            int row = Math.floorDiv(p, window.width());
            double x = (2.0 * (p - row * window.width()) + 1) / window.width() - 1;
            double y = (2.0 * row + 1) / window.height() - 1;
            for (int k = 0; k < TERMS.length; k++) {
                terms[p][k] = Math.pow(x, TERMS[k][0]) * Math.pow(y, TERMS[k][1]);
            }
            for (int k = 0; k < sights.size(); k++) {
                clouds[k][p] = sights.get(k).clouds().data()[p];
            }
            int at = at(p);
            double light = field.light().data()[at] / field.even().data()[at] - 1;
            if (cover.data()[p] < MOST_COVER
                    && field.even().data()[at] > LEAST_LIGHT
                    && !Double.isNaN(light)
                    && doubtless(p)) {
                clouds[sights.size()][p] = light;
                weight[p] = Math.max(0, 1 - x * x - y * y);
                sum += weight[p];
            }
        }
        weights = sum;
        if (tells()) {
            flatten();
            covariance = covariances();
        }
    }

    private int at(int pixel) {
        return (window.top() + pixel / window.width()) * field.even().width() + window.left() + pixel % window.width();
    }

    private boolean doubtless(int pixel) {
        return sights.stream().allMatch(s -> s.doubt().data()[pixel] < MOST_DOUBT);
    }

    private boolean tells() {
        return weights > ENOUGH * (TERMS.length + sights.size());
    }

    /** Takes a smooth surface off the clouds: nothing but what bends more tells of bands. */
    private void flatten() {
        double[][] normal = new double[TERMS.length][TERMS.length];
        double[][] right = new double[clouds.length][TERMS.length];
        for (int p = 0; p < weight.length; p++) {
            for (int i = 0; i < TERMS.length; i++) {
                double term = weight[p] * terms[p][i];
                for (int j = 0; j <= i; j++) {
                    normal[i][j] += term * terms[p][j];
                }
                for (int k = 0; k < clouds.length; k++) {
                    right[k][i] += term * clouds[k][p];
                }
            }
        }
        for (int k = 0; k < clouds.length; k++) {
            double[] smooth = solved(normal, right[k]);
            for (int p = 0; p < weight.length; p++) {
                for (int i = 0; i < TERMS.length; i++) {
                    clouds[k][p] -= smooth[i] * terms[p][i];
                }
            }
        }
    }

    private double[][] covariances() {
        double[][] sums = new double[clouds.length][clouds.length];
        for (int p = 0; p < weight.length; p++) {
            for (int i = 0; i < clouds.length; i++) {
                for (int j = 0; j <= i; j++) {
                    sums[i][j] += weight[p] * clouds[i][p] * clouds[j][p] / weights;
                    sums[j][i] = sums[i][j];
                }
            }
        }
        return sums;
    }

    /**
     * Brings the even globe's light to that of the clouds that others saw.
     *
     * @param even light of the even globe, changed within the window
     * @param rough standard error of it there
     */
    void lay(Plane even, Plane rough) {
        if (!tells()) {
            return;
        }
        int others = sights.size();
        double[] doubt = new double[others];
        double ridge = 0;
        double left = covariance[others][others];
        for (int k = 0; k < REFINEMENTS; k++) {
            ridge = left * 4 * Math.PI * Math.pow(field.frame().blurPx(), 2) / weights;
            left = left(coefficients(ridge, doubt));
        }
        for (int p = 0; p < weight.length; p++) {
            for (int k = 0; k < others; k++) {
                doubt[k] = sights.get(k).doubt().data()[p];
            }
            double[] coefficients = coefficients(ridge, doubt);
            double guess = 0;
            double variance = covariance[others][others];
            for (int k = 0; k < others; k++) {
                guess += coefficients[k] * clouds[k][p];
                variance -= coefficients[k] * covariance[k][others];
            }
            float light = field.even().data()[at(p)];
            even.data()[at(p)] = (float) (light * (1 + guess));
            rough.data()[at(p)] = (float) (light * Math.sqrt(Math.max(left, variance)));
        }
    }

    private double[] coefficients(double ridge, double[] doubt) {
        int others = sights.size();
        double[][] matrix = new double[others][others];
        double[] right = new double[others];
        for (int i = 0; i < others; i++) {
            System.arraycopy(covariance[i], 0, matrix[i], 0, others);
            matrix[i][i] += ridge + doubt[i] * doubt[i] + LEAST_VARIANCE;
            right[i] = covariance[i][others];
        }
        return solved(matrix, right);
    }

    /** Variance that a guess leaves where nothing is uncertain. */
    private double left(double[] coefficients) {
        int others = sights.size();
        double left = covariance[others][others];
        for (int i = 0; i < others; i++) {
            left -= 2 * coefficients[i] * covariance[i][others];
            for (int j = 0; j < others; j++) {
                left += coefficients[i] * coefficients[j] * covariance[i][j];
            }
        }
        return Math.max(LEAST_VARIANCE, left);
    }

    /** By a symmetric matrix whose lower half is given: sums that cancel differ in their last digits if made twice. */
    private static double[] solved(double[][] matrix, double[] right) {
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j < i; j++) {
                matrix[j][i] = matrix[i][j];
            }
        }
        return new CholeskyDecomposition(new Array2DRowRealMatrix(matrix, false), 1e-6, 0)
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
    }
}
