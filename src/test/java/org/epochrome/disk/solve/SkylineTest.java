package org.epochrome.disk.solve;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Banded systems with a full border, as the disk fit has them, against the dense solver of Commons Math. */
class SkylineTest {
    /** Systems of condition below 1e4 keep twelve digits of sixteen. */
    private static final double TOLERANCE = 1e-11;

    /** A system held twice: by its skyline and densely. */
    private static final class Twice {
        final int size;
        final Skyline skyline;
        final RealMatrix matrix;
        final RealVector right;

        /** The last {@code border} rows are full, the others reach back over {@code band} unknowns. */
        Twice(int size, int band, int border) {
            this.size = size;
            int[] first = new int[size];
            for (int i = 0; i < size - border; i++) {
                first[i] = Math.max(0, i - band);
            }
            skyline = new Skyline(first);
            matrix = new Array2DRowRealMatrix(size, size);
            right = new ArrayRealVector(size);
        }

        void add(int row, int column, double value) {
            skyline.add(row, column, value);
            matrix.addToEntry(row, column, value);
            if (row != column) {
                matrix.addToEntry(column, row, value);
            }
        }

        /** An observation of some neighbouring unknowns, in two runs, and of the border. */
        void observe(Random random, int start, int length, int border, int gap) {
            int[] starts = {start, start + length + gap, size - border};
            int[] lengths = {length, length, border};
            double[] slopes = random.doubles(2L * length + border, -1, 1).toArray();
            double weight = 0.5 + random.nextDouble();
            double residual = random.nextGaussian();
            skyline.addObservation(3, starts, lengths, slopes, weight, residual);
            RealVector all = new ArrayRealVector(size);
            int k = 0;
            for (int run = 0; run < 3; run++) {
                for (int i = 0; i < lengths[run]; i++) {
                    all.setEntry(starts[run] + i, slopes[k++]);
                }
            }
            RealMatrix product = all.outerProduct(all).scalarMultiply(weight);
            matrix.setSubMatrix(matrix.add(product).getData(), 0, 0);
            right.setSubVector(0, right.add(all.mapMultiply(weight * residual)));
        }

        static Twice random(int size, int band, int border, long seed) {
            Random random = new Random(seed);
            Twice twice = new Twice(size, band, border);
            for (int i = 0; i < size; i++) {
                twice.add(i, i, 0.1 + random.nextDouble());
            }
            int gap = 1;
            int length = (band - gap + 1) / 2;
            for (int i = 0; i < 4 * size; i++) {
                twice.observe(random, random.nextInt(size - border - 2 * length - gap + 1), length, border, gap);
            }
            return twice;
        }
    }

    @ParameterizedTest
    @CsvSource({"12, 5, 1", "40, 9, 7", "61, 4, 3", "90, 30, 7", "30, 22, 4"})
    void solutionAndVariances(int size, int band, int border) {
        for (long seed = 1; seed <= 3; seed++) {
            Twice twice = Twice.random(size, band, border, seed);
            CholeskyDecomposition dense = new CholeskyDecomposition(twice.matrix);
            double[] expected = dense.getSolver().solve(twice.right).toArray();
            assertArrayEquals(expected, twice.skyline.solve(), TOLERANCE);
            RealMatrix inverse = dense.getSolver().getInverse();
            double[] variances = twice.skyline.lastVariances(border);
            for (int i = 0; i < border; i++) {
                int unknown = size - border + i;
                assertEquals(inverse.getEntry(unknown, unknown), variances[i], TOLERANCE);
            }
        }
    }

    /** A held unknown is one that the dense system does not have at all. */
    @Test
    void heldUnknowns() {
        int size = 40;
        int border = 6;
        Twice twice = Twice.random(size, 9, border, 5);
        int[] kept = java.util.stream.IntStream.range(0, size)
                .filter(i -> i != 35 && i != 38)
                .toArray();
        RealMatrix rest = twice.matrix.getSubMatrix(kept, kept);
        RealVector restRight = new ArrayRealVector(
                Arrays.stream(kept).mapToDouble(twice.right::getEntry).toArray());
        CholeskyDecomposition dense = new CholeskyDecomposition(rest);
        RealVector expected = dense.getSolver().solve(restRight);
        twice.skyline.hold(35);
        twice.skyline.hold(38);
        double[] solution = twice.skyline.solve();
        double[] variances = twice.skyline.lastVariances(border);
        RealMatrix inverse = dense.getSolver().getInverse();
        assertEquals(0, solution[35]);
        assertEquals(0, solution[38]);
        for (int i = 0; i < kept.length; i++) {
            assertEquals(expected.getEntry(i), solution[kept[i]], TOLERANCE);
            if (kept[i] >= size - border) {
                assertEquals(inverse.getEntry(i, i), variances[kept[i] - size + border], TOLERANCE);
            }
        }
    }

    @Test
    void sumOfParts() {
        Twice one = Twice.random(30, 7, 3, 8);
        Twice other = Twice.random(30, 7, 3, 9);
        one.skyline.add(other.skyline);
        RealVector expected = new CholeskyDecomposition(one.matrix.add(other.matrix))
                .getSolver()
                .solve(one.right.add(other.right));
        assertArrayEquals(expected.toArray(), one.skyline.solve(), TOLERANCE);
    }

    /** The eigenvalues of ((1, 2), (2, 1)) are 3 and -1. */
    @Test
    void notPositiveDefinite() {
        Twice twice = new Twice(2, 1, 1);
        twice.add(0, 0, 1);
        twice.add(1, 0, 2);
        twice.add(1, 1, 1);
        assertNull(twice.skyline.solve());
        Skyline unknown = new Skyline(new int[] {0});
        unknown.add(0, 0, Double.NaN);
        assertNull(unknown.solve());
    }

    /** Neighbouring pixels share their unknowns or do not, one to nine in a row. */
    @Test
    void batchesAddTheSameBits() {
        int[] first = new int[40];
        Skyline together = new Skyline(first);
        Skyline oneByOne = new Skyline(first);
        ObservationBatch batch = new ObservationBatch(together, 2, 16);
        Random random = new Random(5);
        int[][] runs = new int[2][];
        for (int i = 0; i < 400; i++) {
            if (i % 10 == 0 || random.nextInt(5) == 0) {
                runs[0] = new int[] {random.nextInt(15), 20 + random.nextInt(10)};
                runs[1] = new int[] {1 + random.nextInt(5), 1 + random.nextInt(8)};
            }
            double[] slopes = random.doubles(16, -1, 1).toArray();
            double weight = random.nextDouble();
            double residual = random.nextGaussian();
            oneByOne.addObservation(2, runs[0], runs[1], slopes, weight, residual);
            System.arraycopy(runs[0], 0, batch.starts(), 0, 2);
            System.arraycopy(runs[1], 0, batch.lengths(), 0, 2);
            System.arraycopy(slopes, 0, batch.slopes(), 0, 16);
            batch.add(weight, residual);
        }
        batch.end();
        for (int i = 0; i < first.length; i++) {
            together.add(i, i, 0.1);
            oneByOne.add(i, i, 0.1);
        }
        double[] solved = oneByOne.solve();
        assertArrayEquals(solved, together.solve(), 0);
        assertTrue(Arrays.stream(solved).filter(x -> x != 0).count() > 30, "unknowns that were observed");
    }
}
