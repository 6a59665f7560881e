package org.epochrome.align;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Least-squares adjustment of the measured shifts between frames: the displacements of all frames against a reference that
 * fit the measurements best, with their covariance. Where the measurements contradict each other by more than their
 * standard errors allow, the covariance grows by chi-square over the degrees of freedom (Birge 1932, Phys. Rev. 40, 207).
 */
public final class NetworkAdjustment {
    /** Standard error of a frame that nothing was measured about, pixels. */
    private static final double FREE_PX = 1e3;

    private final int reference;
    private final RealVector solution;
    private final RealMatrix covariance;
    private final double contradiction;

    /**
     * @param frames how many frames there are
     * @param reference index of the frame that does not move
     * @param links the measurements; unknown shifts are ignored
     */
    public NetworkAdjustment(int frames, int reference, List<Link> links) {
        this.reference = reference;
        RealMatrix normal = new Array2DRowRealMatrix(2 * frames, 2 * frames);
        RealVector right = new ArrayRealVector(2 * frames);
        for (int i = 0; i < 2 * frames; i++) {
            normal.addToEntry(i, i, 1 / (FREE_PX * FREE_PX));
        }
        List<Link> known = links.stream().filter(l -> l.shift().known()).toList();
        for (Link link : known) {
            double[][] weight = weight(link.shift());
            double[] shift = {link.shift().x(), link.shift().y()};
            for (int p = 0; p < 2; p++) {
                for (int q = 0; q < 2; q++) {
                    add(normal, right, link, p, q, weight[p][q], shift[q]);
                }
            }
        }
        CholeskyDecomposition cholesky = new CholeskyDecomposition(normal, 1e-9, 1e-30);
        solution = cholesky.getSolver().solve(right);
        int excess = 2 * (known.size() - frames + 1);
        contradiction = excess > 0 ? chiSquare(known) / excess : 0;
        covariance = cholesky.getSolver().getInverse().scalarMultiply(Math.max(1, contradiction));
    }

    private void add(RealMatrix normal, RealVector right, Link link, int p, int q, double weight, double shift) {
        int[] ends = {link.to(), link.from()};
        for (int a = 0; a < 2; a++) {
            if (ends[a] != reference) {
                double sign = a == 0 ? 1 : -1;
                right.addToEntry(2 * ends[a] + p, sign * weight * shift);
                for (int b = 0; b < 2; b++) {
                    if (ends[b] != reference) {
                        normal.addToEntry(2 * ends[a] + p, 2 * ends[b] + q, a == b ? weight : -weight);
                    }
                }
            }
        }
    }

    private static double[][] weight(Shift s) {
        double xx = s.sigmaX() * s.sigmaX();
        double yy = s.sigmaY() * s.sigmaY();
        double determinant = xx * yy - s.covariance() * s.covariance();
        return new double[][] {
            {yy / determinant, -s.covariance() / determinant}, {-s.covariance() / determinant, xx / determinant}
        };
    }

    private double chiSquare(List<Link> known) {
        double sum = 0;
        for (Link link : known) {
            double[][] weight = weight(link.shift());
            double x = link.shift().x() - at(link.to(), 0) + at(link.from(), 0);
            double y = link.shift().y() - at(link.to(), 1) + at(link.from(), 1);
            sum += weight[0][0] * x * x + 2 * weight[0][1] * x * y + weight[1][1] * y * y;
        }
        return sum;
    }

    private double at(int frame, int axis) {
        return frame == reference ? 0 : solution.getEntry(2 * frame + axis);
    }

    /** Chi-square of the measurements over their degrees of freedom; 0 where none is measured twice. */
    public double contradiction() {
        return contradiction;
    }

    /**
     * A weighted sum of the frames' displacements against the reference, pixels.
     *
     * @param weights one for each frame
     */
    public double[] sum(double[] weights) {
        double[] sum = new double[2];
        for (int i = 0; i < weights.length; i++) {
            sum[0] += weights[i] * at(i, 0);
            sum[1] += weights[i] * at(i, 1);
        }
        return sum;
    }

    /** Covariance of two weighted sums, square pixels: of x and y of the first with x and y of the second. */
    public double[][] covariance(double[] first, double[] second) {
        double[][] result = new double[2][2];
        for (int i = 0; i < first.length; i++) {
            for (int k = 0; k < second.length; k++) {
                if (i != reference && k != reference) {
                    for (int p = 0; p < 2; p++) {
                        for (int q = 0; q < 2; q++) {
                            result[p][q] += first[i] * second[k] * covariance.getEntry(2 * i + p, 2 * k + q);
                        }
                    }
                }
            }
        }
        return result;
    }
}
