package org.epochrome.disk;

import java.util.Arrays;

/**
 * A symmetric, positive definite system of equations whose matrix is kept row by row from each row's first element that
 * can differ from zero up to the diagonal; Cholesky's factors fit in the same place (George and Liu 1981, Computer
 * Solution of Large Sparse Positive Definite Systems, chapter 4).
 */
final class Skyline {
    private final int[] first;
    private final double[][] rows;
    private final double[] right;

    /** @param first column of each row's first element */
    Skyline(int[] first) {
        this.first = first;
        rows = new double[first.length][];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = new double[i - first[i] + 1];
        }
        right = new double[first.length];
    }

    /** Adds to the element of a row and a column not to the right of the diagonal, and to its mirror image. */
    void add(int row, int column, double value) {
        rows[row][column - first[row]] += value;
    }

    void addRight(int row, double value) {
        right[row] += value;
    }

    /**
     * Adds what one observation says.
     *
     * @param n number of unknowns that it depends on
     * @param columns their numbers, ascending
     * @param slopes its derivatives by them
     * @param weight its inverse variance
     * @param residual what is left of it
     */
    void addObservation(int n, int[] columns, double[] slopes, double weight, double residual) {
        for (int i = 0; i < n; i++) {
            double weighted = weight * slopes[i];
            double[] row = rows[columns[i]];
            int shift = first[columns[i]];
            for (int j = 0; j <= i; j++) {
                row[columns[j] - shift] += weighted * slopes[j];
            }
            right[columns[i]] += weighted * residual;
        }
    }

    void add(Skyline other) {
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
    void hold(int index) {
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
    double[] solve() {
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

    /** Scalar product of a vector that begins at column {@code shift} with the factor's row j, left of column j. */
    private double dot(double[] a, int shift, int j) {
        double[] b = rows[j];
        int start = first[j];
        double sum = 0;
        for (int k = Math.max(shift, start); k < j; k++) {
            sum += a[k - shift] * b[k - start];
        }
        return sum;
    }

    /** Variances of the last unknowns, all the others marginalised, from the factor that {@link #solve} left. */
    double[] lastVariances(int count) {
        int before = rows.length - count;
        double[] variances = new double[count];
        for (int u = 0; u < count; u++) {
            // Column u of the inverse of the factor's last block adds its squares to the variances.
            double[] column = new double[count];
            for (int i = u; i < count; i++) {
                double[] row = rows[before + i];
                int shift = before - first[before + i];
                double sum = i == u ? 1 : 0;
                for (int j = u; j < i; j++) {
                    sum -= row[shift + j] * column[j];
                }
                column[i] = sum / row[shift + i];
                variances[u] += column[i] * column[i];
            }
        }
        return variances;
    }
}
