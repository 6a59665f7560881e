package org.epochrome.disk.solve;

/**
 * Derivatives of sampled data by central differences of eighth order (Fornberg 1988, Math. Comp. 51, 699, table 1), good
 * for a picture that is blurred by little more than a pixel.
 */
public final class Slope {
    /** Samples needed on either side. */
    public static final int REACH = 4;

    private static final double[] FIRST = {4 / 5.0, -1 / 5.0, 4 / 105.0, -1 / 280.0};
    private static final double[] SECOND = {8 / 5.0, -1 / 5.0, 8 / 315.0, -1 / 560.0};
    private static final double SECOND_MIDDLE = -205 / 72.0;

    private Slope() {}

    /** First derivative at index p along a direction in which neighbours lie {@code step} apart. */
    public static double first(float[] data, int p, int step) {
        double sum = 0;
        for (int i = 1; i <= REACH; i++) {
            sum += FIRST[i - 1] * ((double) data[p + i * step] - data[p - i * step]);
        }
        return sum;
    }

    /** Second derivative. */
    public static double second(float[] data, int p, int step) {
        double sum = SECOND_MIDDLE * data[p];
        for (int i = 1; i <= REACH; i++) {
            sum += SECOND[i - 1] * ((double) data[p + i * step] + data[p - i * step]);
        }
        return sum;
    }
}
