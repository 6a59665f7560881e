package org.epochrome.disk.solve;

/** Uniform B-splines between two knots (de Boor 1978, A Practical Guide to Splines, chapter IX). */
public final class BSpline {
    private BSpline() {}

    /**
     * The four weights of the cubic.
     *
     * @param f place, from 0 at the knot before to 1 at the knot after
     * @param weights filled from the start; they belong to knots -1 to 2 and add up to one
     */
    public static void cubic(double f, double[] weights) {
        double g = 1 - f;
        weights[0] = g * g * g / 6;
        weights[1] = (4 - 3 * f * f * (2 - f)) / 6;
        weights[3] = f * f * f / 6;
        weights[2] = 1 - weights[0] - weights[1] - weights[3];
    }

    /** The six weights of the quintic, which belong to knots -2 to 3. */
    public static void quintic(double f, double[] weights) {
        double g = 1 - f;
        weights[0] = fifth(g) / 120;
        weights[1] = (fifth(g + 1) - 6 * fifth(g)) / 120;
        weights[2] = middle(f);
        weights[3] = middle(g);
        weights[4] = (fifth(f + 1) - 6 * fifth(f)) / 120;
        weights[5] = fifth(f) / 120;
    }

    private static double fifth(double u) {
        return u * u * u * u * u;
    }

    private static double middle(double u) {
        double square = u * u;
        return (66 - square * (60 - square * (30 - 10 * u))) / 120;
    }
}
