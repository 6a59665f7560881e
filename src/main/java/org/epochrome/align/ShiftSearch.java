package org.epochrome.align;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.epochrome.image.Plane;
import org.epochrome.image.Spline;
import org.epochrome.job.Rows;

/**
 * The search for the shifts. Unknowns: the predicted frame's shift against the reference, then, with a second
 * regressor, that one's; or, with one regressor and four unknowns, growth and clockwise turn at half the window's width
 * from its middle.
 */
final class ShiftSearch {
    private static final int MOST_STEPS = 12;
    private static final double SETTLED_PX = 0.003;
    /** Beyond this standard error the detail says nothing worth hearing. */
    private static final double USELESS_PX = 0.5;
    /** By how much blocks understate the errors, for what is left is alike across their borders too; found on invented scenes. */
    private static final double INFLATED = 1.25;

    private static final double FARTHEST_PX = 3;

    private final int factor;
    private final Plane target;
    private final Plane targetWeight;
    private final Spline[] regressor;
    private final Spline[] regressorWeight;
    private final double spot;
    private final double[] start;
    private final double[] shift;
    private final boolean similar;
    private final double half;

    ShiftSearch(Detail target, List<Detail> regressors, double[] startPx) {
        double coarsest = target.grainPx();
        double largest = target.spotPx();
        for (Detail r : regressors) {
            coarsest = Math.max(coarsest, r.grainPx());
            largest = Math.max(largest, r.spotPx());
        }
        factor = Math.max(1, (int) (coarsest / 1.6));
        spot = largest / factor;
        this.target = target.binned(factor).markings();
        targetWeight = target.binned(factor).weight();
        regressor = new Spline[regressors.size()];
        regressorWeight = new Spline[regressors.size()];
        for (int k = 0; k < regressor.length; k++) {
            regressor[k] = new Spline(regressors.get(k).binned(factor).markings());
            regressorWeight[k] = new Spline(regressors.get(k).binned(factor).weight());
        }
        start = startPx.clone();
        for (int i = 0; i < start.length; i++) {
            start[i] /= factor;
        }
        shift = start.clone();
        similar = regressor.length == 1 && shift.length == 4;
        half = 0.5 * this.target.width();
    }

    List<Shift> run() {
        return covariance().map(this::found).orElseGet(this::unknown);
    }

    Optional<Similarity> similarity() {
        return covariance().flatMap(covariance -> {
            Shift moved = shift(0, covariance);
            return moved.known()
                    ? Optional.of(new Similarity(
                            moved,
                            shift[2] / half,
                            Math.sqrt(covariance.getEntry(2, 2)) / half,
                            -shift[3] / half,
                            Math.sqrt(covariance.getEntry(3, 3)) / half))
                    : Optional.empty();
        });
    }

    /**
     * Searches; the covariance of the unknowns where the search settles. What is left is alike over unknown lengths, so
     * the errors are those by which the blocks, each larger than those lengths, differ in what they ask for (Huber
     * 1967, Proc. 5th Berkeley Symposium 1, 221; White 1980, Econometrica 48, 817).
     */
    private Optional<RealMatrix> covariance() {
        int n = shift.length;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[][] sums = normals();
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
                if (Math.abs(shift[i] - start[i]) * factor > FARTHEST_PX) {
                    return Optional.empty();
                }
            }
            if (length < SETTLED_PX) {
                return covariance;
            }
        }
        return Optional.empty();
    }

    private List<Shift> unknown() {
        return shift.length == 2 ? List.of(Shift.UNKNOWN) : List.of(Shift.UNKNOWN, Shift.UNKNOWN);
    }

    private List<Shift> found(RealMatrix covariance) {
        Shift first = shift(0, covariance);
        return shift.length == 2 ? List.of(first) : List.of(first, shift(2, covariance));
    }

    private Shift shift(int at, RealMatrix covariance) {
        Shift found = new Shift(
                        shift[at],
                        shift[at + 1],
                        Math.sqrt(covariance.getEntry(at, at)),
                        Math.sqrt(covariance.getEntry(at + 1, at + 1)),
                        covariance.getEntry(at, at + 1))
                .times(factor);
        return Math.max(found.sigmaX(), found.sigmaY()) > USELESS_PX ? Shift.UNKNOWN : found;
    }

    /**
     * Upper triangle of the normal equations, their right side as the next row, the upper triangle of the products
     * of the parts that the blocks add to the right side, and what the bend of the regressors takes off the first.
     */
    private double[][] normals() {
        int width = target.width();
        int height = target.height();
        Plane weight = new Plane(width, height);
        Plane a = moved(0, shift[0], shift[1], similar ? shift[2] : 0, similar ? shift[3] : 0, weight);
        // What is predicted lies at its own shift; the second regressor is moved by the difference.
        Plane b = regressor.length == 1 ? null : moved(1, shift[0] - shift[2], shift[1] - shift[3], 0, 0, weight);
        LocalRelation local = new LocalRelation(a, b, target, weight, DetailWitness.NEIGHBOURHOOD * spot);
        int n = shift.length;
        int side = Math.max(2, (int) Math.round(DetailWitness.NEIGHBOURHOOD * spot));
        double[][][] bands = new double[(height + side - 1) / side][][];
        Rows.each(bands.length, (from, to) -> {
            for (int band = from; band < to; band++) {
                bands[band] = band(band * side, side, a, b, local, weight);
            }
        });
        double[][] total = new double[3 * n + 1][n];
        for (double[][] band : bands) {
            for (int i = 0; i <= 3 * n; i++) {
                for (int j = 0; j < n; j++) {
                    total[i][j] += band[i][j];
                }
            }
        }
        return total;
    }

    /** What the blocks in some rows add to the normal equations. */
    private double[][] band(int top, int side, Plane a, Plane b, LocalRelation local, Plane weight) {
        int n = shift.length;
        double[] slope = new double[n];
        double[] second = new double[3];
        double[][] sum = new double[3 * n + 1][n];
        for (int left = 0; left < target.width(); left += side) {
            double[] before = sum[n].clone();
            for (int y = Math.max(1, top); y < Math.min(target.height() - 1, top + side); y++) {
                for (int x = Math.max(1, left); x < Math.min(target.width() - 1, left + side); x++) {
                    float w = weight.at(x, y);
                    if (w > 0) {
                        add(x, y, w, a, b, local, slope, second, sum);
                    }
                }
            }
            for (int p = 0; p < n; p++) {
                for (int q = p; q < n; q++) {
                    sum[n + 1 + p][q] += (sum[n][p] - before[p]) * (sum[n][q] - before[q]);
                }
            }
        }
        return sum;
    }

    private Plane moved(int k, double right, double down, double grown, double turned, Plane weight) {
        Plane result = new Plane(target.width(), target.height());
        Rows.each(target.height(), (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < target.width(); x++) {
                    float w = k == 0 ? targetWeight.at(x, y) : weight.at(x, y);
                    if (w > 0) {
                        double u = across(x);
                        double v = across(y);
                        double dx = right + grown * u - turned * v;
                        double dy = down + grown * v + turned * u;
                        result.set(x, y, regressor[k].at(x - dx, y - dy));
                        w *= Math.max(0, regressorWeight[k].at(x - dx, y - dy));
                    }
                    weight.set(x, y, w);
                }
            }
        });
        return result;
    }

    /** A column or row, from the middle of the window, over half its width. */
    private double across(int xOrY) {
        return (xOrY - half + 0.5) / half;
    }

    private void add(
            int x,
            int y,
            float w,
            Plane a,
            Plane b,
            LocalRelation local,
            double[] slope,
            double[] second,
            double[][] sum) {
        int width = a.width();
        int i = y * width + x;
        int at = local.cell(x, y);
        float[] va = a.data();
        double gain = local.gainA(at);
        double residual = target.data()[i] - gain * va[i];
        slope[0] = -gain * 0.5 * (va[i + 1] - va[i - 1]);
        slope[1] = -gain * 0.5 * (va[i + width] - va[i - width]);
        if (b != null) {
            float[] vb = b.data();
            double other = local.gainB(at);
            residual -= other * vb[i];
            slope[2] = other * 0.5 * (vb[i + 1] - vb[i - 1]);
            slope[3] = other * 0.5 * (vb[i + width] - vb[i - width]);
            slope[0] -= slope[2];
            slope[1] -= slope[3];
        }
        if (similar) {
            double across = across(x);
            double down = across(y);
            slope[2] = across * slope[0] + down * slope[1];
            slope[3] = across * slope[1] - down * slope[0];
        }
        double u = w / Math.max(local.unexplained(at), 1e-9);
        if (!similar) {
            bend(x, y, u * residual, a, b, local, second, sum);
        }
        int n = slope.length;
        for (int p = 0; p < n; p++) {
            for (int q = p; q < n; q++) {
                sum[p][q] += u * slope[p] * slope[q];
            }
            sum[n][p] += u * slope[p] * residual;
        }
    }

    /**
     * What the second derivatives of the prediction add. Noise in the regressors makes slopes of its own, which the
     * normal equations count as knowledge; against the residual, which holds the same noise, its bends take that off.
     */
    private void bend(
            int x, int y, double residual, Plane a, Plane b, LocalRelation local, double[] second, double[][] sum) {
        int n = shift.length;
        int at = local.cell(x, y);
        second(a, x, y, residual * local.gainA(at), second);
        sum[2 * n + 1][0] -= second[0];
        sum[2 * n + 1][1] -= second[1];
        sum[2 * n + 2][1] -= second[2];
        if (b != null) {
            second(b, x, y, residual * local.gainB(at), second);
            for (int p = 0; p < 2; p++) {
                for (int q = 0; q < 2; q++) {
                    sum[2 * n + 1 + p][q] -= q < p ? 0 : second[p + q];
                    sum[2 * n + 1 + p][2 + q] += second[p + q];
                    sum[2 * n + 3 + p][2 + q] -= q < p ? 0 : second[p + q];
                }
            }
        }
    }

    /** Second derivatives xx, xy, yy times a factor, by the differences that the slopes are made of. */
    private static void second(Plane plane, int x, int y, double factor, double[] second) {
        int right = Math.min(x + 2, plane.width() - 1);
        int left = Math.max(x - 2, 0);
        int below = Math.min(y + 2, plane.height() - 1);
        int above = Math.max(y - 2, 0);
        double twice = 2 * plane.at(x, y);
        second[0] = 0.25 * factor * (plane.at(right, y) - twice + plane.at(left, y));
        second[2] = 0.25 * factor * (plane.at(x, below) - twice + plane.at(x, above));
        second[1] = 0.25
                * factor
                * (plane.at(x + 1, y + 1) - plane.at(x - 1, y + 1) - plane.at(x + 1, y - 1) + plane.at(x - 1, y - 1));
    }

    /** The step, and the covariance of what it leads to; empty if the detail says nothing in some direction. */
    private static Optional<RealMatrix> solve(double[][] sums, double[] move) {
        int n = move.length;
        RealMatrix matrix = new Array2DRowRealMatrix(n, n);
        RealMatrix blocks = new Array2DRowRealMatrix(n, n);
        RealMatrix bent = new Array2DRowRealMatrix(n, n);
        for (int p = 0; p < n; p++) {
            for (int q = p; q < n; q++) {
                // One datum of a pixel's own noise keeps directions without detail from running away.
                set(matrix, p, q, sums[p][q] + (p == q ? 1 : 0));
                set(blocks, p, q, sums[n + 1 + p][q]);
                set(bent, p, q, matrix.getEntry(p, q) + sums[2 * n + 1 + p][q]);
            }
        }
        try {
            RealMatrix inverse = inverse(matrix);
            System.arraycopy(inverse.operate(sums[n]), 0, move, 0, n);
            RealMatrix sure = inverse(bent);
            // No surer than if every pixel had noise of its own.
            return Optional.of(sure.multiply(blocks)
                    .multiply(sure)
                    .scalarMultiply(INFLATED * INFLATED)
                    .add(inverse));
        } catch (NonPositiveDefiniteMatrixException e) {
            return Optional.empty();
        }
    }

    private static void set(RealMatrix symmetric, int p, int q, double value) {
        symmetric.setEntry(p, q, value);
        symmetric.setEntry(q, p, value);
    }

    private static RealMatrix inverse(RealMatrix matrix) {
        return new CholeskyDecomposition(matrix, 1e-9, 1e-30).getSolver().getInverse();
    }
}
