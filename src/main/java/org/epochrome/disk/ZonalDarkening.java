package org.epochrome.disk;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The brightness of a belted globe by latitude, and by how much the exponent of its limb darkening differs from parallel to
 * parallel: polar hazes darken less towards the limb than belts do. Rotation keeps latitudes, so both turn with the globe.
 */
public final class ZonalDarkening {
    private static final int PER_DEGREE = 2;
    private static final int COUNT = 180 * PER_DEGREE + 1;
    /** Half width of the latitudes that share a limb darkening, degrees (common practice, no source). */
    private static final int ALIKE_DEG = 8;
    /** Scatter of exponents from parallel to parallel, and of the brightness along one (common practice, no source). */
    private static final double EXPONENT_SCATTER = 0.1;

    private static final double CLOUD_SCATTER = 0.1;
    /** Size of what makes that scatter, radii (common practice, no source). */
    private static final double CLOUD = 0.3;
    /** Cosines from which on to limb and terminator the law goes on unchanged. */
    private static final double GRAZING = 0.05;

    private final double[] logarithms;
    private final double[] exponents;

    private ZonalDarkening(double[] logarithms, double[] exponents) {
        this.logarithms = logarithms;
        this.exponents = exponents;
    }

    /** Derivative of the logarithm of Minnaert's law by its exponent, bounded at limb and terminator. */
    public static double slope(double incidence, double emission) {
        return Math.log(Math.max(GRAZING, incidence) * Math.max(GRAZING, emission));
    }

    /** The {@link #slope(double, double) slope} at one place less that at another. */
    public static double slope(double toIncidence, double toEmission, double incidence, double emission) {
        return Math.log(Math.max(GRAZING, toIncidence)
                * Math.max(GRAZING, toEmission)
                / (Math.max(GRAZING, incidence) * Math.max(GRAZING, emission)));
    }

    /** What the exponent at a planetographic latitude, radians, adds to that of the whole globe. */
    public double exponent(double latitude) {
        return between(exponents, latitude);
    }

    /** Logarithm of the factor on the globe's light at a planetographic latitude, radians, where the {@link #slope} is known. */
    public double logarithm(double latitude, double slope) {
        return between(logarithms, latitude) + slope * between(exponents, latitude);
    }

    private static double between(double[] values, double latitude) {
        double at = place(latitude);
        int below = (int) at;
        return values[below] + (at - below) * (values[below + 1] - values[below]);
    }

    private static double place(double latitude) {
        double at = (Math.toDegrees(latitude) + 90) * PER_DEGREE;
        return Math.max(0, Math.min(COUNT - 1 - 1e-9, at));
    }

    /** Sums over the places of a globe, by latitude. */
    public static final class Sums {
        private final double[] weights = new double[COUNT];
        private final double[] slopes = new double[COUNT];
        private final double[] values = new double[COUNT];
        private final double[] squares = new double[COUNT];
        private final double[] products = new double[COUNT];

        /**
         * Adds a place.
         *
         * @param latitude planetographic, radians
         * @param slope {@link ZonalDarkening#slope} there
         * @param logarithm of the light against the law of the whole globe
         */
        public void add(double latitude, double weight, double slope, double logarithm) {
            double at = place(latitude);
            int below = (int) at;
            add(below, (1 - (at - below)) * weight, slope, logarithm);
            add(below + 1, (at - below) * weight, slope, logarithm);
        }

        private void add(int i, double weight, double slope, double value) {
            weights[i] += weight;
            slopes[i] += weight * slope;
            values[i] += weight * value;
            squares[i] += weight * slope * slope;
            products[i] += weight * slope * value;
        }

        /**
         * Least squares at each latitude, with an expectation that exponents differ little.
         *
         * @param radiusPx radius of the disk in places
         */
        public ZonalDarkening darkening(double radiusPx) {
            double clouds = CLOUD_SCATTER / EXPONENT_SCATTER * CLOUD * radiusPx;
            double[] exponents = new double[COUNT];
            double[] logarithms = new double[COUNT];
            for (int i = 0; i < COUNT; i++) {
                double square = clouds * clouds;
                double product = 0;
                int last = Math.min(COUNT - 1, i + ALIKE_DEG * PER_DEGREE);
                for (int k = Math.max(0, i - ALIKE_DEG * PER_DEGREE); k <= last; k++) {
                    if (weights[k] > 0) {
                        square += squares[k] - slopes[k] * slopes[k] / weights[k];
                        product += products[k] - slopes[k] * values[k] / weights[k];
                    }
                }
                exponents[i] = product / square;
                logarithms[i] = values[i] - exponents[i] * slopes[i];
            }
            return new ZonalDarkening(filled(logarithms), exponents);
        }

        /** Means; latitudes that are not seen are like the nearest that is. */
        private double[] filled(double[] sums) {
            int[] seen = IntStream.range(0, COUNT).filter(i -> weights[i] > 0).toArray();
            double[] means = new double[COUNT];
            for (int i = 0; i < COUNT && seen.length > 0; i++) {
                int found = Arrays.binarySearch(seen, i);
                int after = found >= 0 ? found : -found - 1;
                int nearest = after == seen.length || (after > 0 && i - seen[after - 1] < seen[after] - i)
                        ? after - 1
                        : after;
                means[i] = sums[seen[nearest]] / weights[seen[nearest]];
            }
            return means;
        }
    }
}
