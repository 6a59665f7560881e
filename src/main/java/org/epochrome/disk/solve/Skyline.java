package org.epochrome.disk.solve;

import java.util.Arrays;

/**
 * A symmetric, positive definite system of equations whose matrix is kept row by row from each row's first element that
 * can differ from zero up to the diagonal; Cholesky's factors fit in the same place (George and Liu 1981, Computer
 * Solution of Large Sparse Positive Definite Systems, chapter 4).
 */
public final class Skyline {
    private final int[] first;
    private final double[][] rows;
    private final double[] right;

    /** @param first column of each row's first element */
    public Skyline(int[] first) {
        this.first = first;
        rows = new double[first.length][];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = new double[i - first[i] + 1];
        }
        right = new double[first.length];
    }

    /** Adds to the element of a row and a column not to the right of the diagonal, and to its mirror image. */
    public void add(int row, int column, double value) {
        rows[row][column - first[row]] += value;
    }

    public void addRight(int row, double value) {
        right[row] += value;
    }

    /**
     * Adds what one observation says that depends on some runs of unknowns.
     *
     * @param runs number of runs
     * @param starts number of each run's first unknown, ascending
     * @param lengths of the runs
     * @param slopes derivatives by the unknowns, run after run
     * @param weight inverse variance
     * @param residual what is left of it
     */
    public void addObservation(int runs, int[] starts, int[] lengths, double[] slopes, double weight, double residual) {
        int i = 0;
        for (int run = 0; run < runs; run++) {
            for (int k = 0; k < lengths[run]; k++, i++) {
                int unknown = starts[run] + k;
                double weighted = weight * slopes[i];
                double[] row = rows[unknown];
                int shift = first[unknown];
                int j = 0;
                for (int other = 0; other < run; other++) {
                    j = addRun(row, starts[other] - shift, lengths[other], slopes, j, weighted);
                }
                addRun(row, starts[run] - shift, k + 1, slopes, j, weighted);
                right[unknown] += weighted * residual;
            }
        }
    }

    /**
     * Adds {@link ObservationBatch#MOST} observations that depend on the same runs of unknowns, one after the other to each element, which
     * is loaded and stored once for all of them; bit for bit what adding them one by one gives.
     */
    void addObservations(
            int runs, int[] starts, int[] lengths, double[][] slopes, double[] weights, double[] residuals) {
        double[] weighted = new double[ObservationBatch.MOST];
        int i = 0;
        for (int run = 0; run < runs; run++) {
            for (int k = 0; k < lengths[run]; k++, i++) {
                int unknown = starts[run] + k;
                double sum = right[unknown];
                for (int b = 0; b < weighted.length; b++) {
                    weighted[b] = weights[b] * slopes[b][i];
                    sum += weighted[b] * residuals[b];
                }
                right[unknown] = sum;
                double[] row = rows[unknown];
                int shift = first[unknown];
                int j = 0;
                for (int other = 0; other < run; other++) {
                    addRuns(row, starts[other] - shift, lengths[other], slopes, j, weighted);
                    j += lengths[other];
                }
                addRuns(row, starts[run] - shift, k + 1, slopes, j, weighted);
            }
        }
    }

    private static void addRuns(double[] row, int at, int length, double[][] slopes, int from, double[] weighted) {
        double[] slopes0 = slopes[0];
        double[] slopes1 = slopes[1];
        double[] slopes2 = slopes[2];
        double[] slopes3 = slopes[3];
        double weighted0 = weighted[0];
        double weighted1 = weighted[1];
        double weighted2 = weighted[2];
        double weighted3 = weighted[3];
        for (int k = 0; k < length; k++) {
            row[at + k] = row[at + k]
                    + weighted0 * slopes0[from + k]
                    + weighted1 * slopes1[from + k]
                    + weighted2 * slopes2[from + k]
                    + weighted3 * slopes3[from + k];
        }
    }

    private static int addRun(double[] row, int at, int length, double[] slopes, int from, double weighted) {
        for (int k = 0; k < length; k++) {
            row[at + k] += weighted * slopes[from + k];
        }
        return from + length;
    }

    public void add(Skyline other) {
        for (int i = 0; i < rows.length; i++) {
            double[] mine = rows[i];
            double[] others = other.rows[i];
            for (int j = 0; j < mine.length; j++) {
                mine[j] += others[j];
            }
            right[i] += other.right[i];
        }
    }

    /** Takes an unknown, one of the last, whose rows are full, out of the equations: its solution becomes zero. */
    public void hold(int index) {
        Arrays.fill(rows[index], 0);
        for (int i = index + 1; i < rows.length; i++) {
            rows[i][index - first[i]] = 0;
        }
        add(index, index, 1);
        right[index] = 0;
    }

    /**
     * Solves the system; afterwards it holds its factor.
     *
     * @return the solution, or null if the matrix is not positive definite
     */
    public double[] solve() {
        int n = rows.length;
        for (int i = 0; i < n; i++) {
            double[] row = rows[i];
            int shift = first[i];
            for (int j = shift; j < i; j++) {
                row[j - shift] = (row[j - shift] - dot(row, shift, j)) / rows[j][j - first[j]];
            }
            double rest = row[i - shift] - dot(row, shift, i);
            if (!(rest > 0)) {
                return null;
            }
            row[i - shift] = Math.sqrt(rest);
        }
        double[] x = right.clone();
        for (int i = 0; i < n; i++) {
            x[i] = (x[i] - dot(x, 0, i)) / rows[i][i - first[i]];
        }
        for (int i = n - 1; i >= 0; i--) {
            double[] row = rows[i];
            x[i] /= row[i - first[i]];
            for (int j = first[i]; j < i; j++) {
                x[j] -= row[j - first[i]] * x[i];
            }
        }
        return x;
    }

    /**
     * Scalar product of a vector that begins at column {@code shift} with the factor's row j, left of column j; four
     * sums at a time, which need not wait for each other.
     */
    private double dot(double[] a, int shift, int j) {
        double[] b = rows[j];
        int start = first[j];
        int k = Math.max(shift, start);
        int toA = -shift;
        int toB = -start;
        double sum0 = 0;
        double sum1 = 0;
        double sum2 = 0;
        double sum3 = 0;
        for (; k < j - 3; k += 4) {
            sum0 += a[k + toA] * b[k + toB];
            sum1 += a[k + 1 + toA] * b[k + 1 + toB];
            sum2 += a[k + 2 + toA] * b[k + 2 + toB];
            sum3 += a[k + 3 + toA] * b[k + 3 + toB];
        }
        for (; k < j; k++) {
            sum0 += a[k + toA] * b[k + toB];
        }
        return sum0 + sum1 + (sum2 + sum3);
    }

    /** Variances of the last unknowns, all the others marginalised, from the factor that {@link #solve} left. */
    public double[] lastVariances(int count) {
        double[][] covariance = lastCovariance(count);
        double[] variances = new double[count];
        for (int u = 0; u < count; u++) {
            variances[u] = covariance[u][u];
        }
        return variances;
    }

    /** Covariance of the last unknowns, all the others marginalised, from the factor that {@link #solve} left. */
    public double[][] lastCovariance(int count) {
        int before = rows.length - count;
        double[][] inverse = new double[count][count];
        for (int u = 0; u < count; u++) {
            // Column u of the inverse of the factor's last block, which is triangular.
            double[] column = inverse[u];
            for (int i = u; i < count; i++) {
                double[] row = rows[before + i];
                int shift = before - first[before + i];
                double sum = i == u ? 1 : 0;
                for (int j = u; j < i; j++) {
                    sum -= row[shift + j] * column[j];
                }
                column[i] = sum / row[shift + i];
            }
        }
        double[][] covariance = new double[count][count];
        for (int u = 0; u < count; u++) {
            for (int v = 0; v <= u; v++) {
                for (int i = u; i < count; i++) {
                    covariance[u][v] += inverse[u][i] * inverse[v][i];
                }
                covariance[v][u] = covariance[u][v];
            }
        }
        return covariance;
    }
}
