package org.epochrome.disk.solve;

import java.util.Arrays;

/**
 * Observations on their way into a {@link Skyline}. Neighbouring pixels depend on the same unknowns; added together they take half
 * the time, and the sums are the same to the last bit.
 */
public final class ObservationBatch {
    /** Number of observations that are added together. */
    public static final int MOST = 4;

    private final Skyline to;
    private final double[][] slopes;
    private final double[] weights = new double[MOST];
    private final double[] residuals = new double[MOST];
    private int[] starts;
    private int[] lengths;
    private int[] nextStarts;
    private int[] nextLengths;
    private int count;

    /**
     * @param runs of unknowns that each observation depends on
     * @param most unknowns in them
     */
    public ObservationBatch(Skyline to, int runs, int most) {
        this.to = to;
        slopes = new double[MOST][most];
        starts = new int[runs];
        lengths = new int[runs];
        nextStarts = new int[runs];
        nextLengths = new int[runs];
    }

    /** Takes the number of each run's first unknown, ascending, of the next observation. */
    public int[] starts() {
        return nextStarts;
    }

    /** Takes the lengths of the runs of the next observation. */
    public int[] lengths() {
        return nextLengths;
    }

    /** Takes the next observation's derivatives by the unknowns, run after run. */
    public double[] slopes() {
        return slopes[count];
    }

    /** Adds the next observation, whose runs and slopes are filled in. */
    public void add(double weight, double residual) {
        if (count > 0 && !(Arrays.equals(starts, nextStarts) && Arrays.equals(lengths, nextLengths))) {
            double[] own = slopes[count];
            slopes[count] = slopes[0];
            addOneByOne();
            slopes[0] = own;
        }
        if (count == 0) {
            int[] free = starts;
            starts = nextStarts;
            nextStarts = free;
            free = lengths;
            lengths = nextLengths;
            nextLengths = free;
        }
        weights[count] = weight;
        residuals[count] = residual;
        count++;
        if (count == MOST) {
            to.addObservations(starts.length, starts, lengths, slopes, weights, residuals);
            count = 0;
        }
    }

    /** Adds those that still wait. */
    public void end() {
        addOneByOne();
    }

    private void addOneByOne() {
        for (int i = 0; i < count; i++) {
            to.addObservation(starts.length, starts, lengths, slopes[i], weights[i], residuals[i]);
        }
        count = 0;
    }
}
