package org.epochrome.turn;

/**
 * What a frame's light near the limb has beyond its shading and its belts, in the mean around the disk, by the cosine of emission: no
 * law of two parameters describes a real limb within a per cent.
 */
final class LimbProfile {
    private static final double STEP = 0.02;
    private static final int COUNT = 25;
    /** Weight, in pixels of full light, of the expectation that there is nothing (common practice, no source). */
    private static final double TRUST = 20;

    private final double[] logarithms;

    private LimbProfile(double[] logarithms) {
        this.logarithms = logarithms;
    }

    /** Logarithm of the factor on the light at a cosine of emission. */
    double at(double emission) {
        double at = Math.max(0, Math.min(COUNT - 1.001, emission / STEP - 0.5));
        int below = (int) at;
        return logarithms[below] + (at - below) * (logarithms[below + 1] - logarithms[below]);
    }

    /** Sums over places of a globe. */
    static final class Sums {
        private final double[] weights = new double[COUNT];
        private final double[] values = new double[COUNT];

        /**
         * Adds a place; those far inside the limb do not count.
         *
         * @param logarithm of the light against shading and belts
         */
        void add(double emission, double weight, double logarithm) {
            int i = (int) (emission / STEP);
            if (i < COUNT) {
                weights[i] += weight;
                values[i] += weight * logarithm;
            }
        }

        /** The means, each with half of its neighbours. */
        LimbProfile profile() {
            double[] means = new double[COUNT];
            for (int i = 0; i < COUNT; i++) {
                double sum = 0;
                double weight = TRUST;
                for (int k = Math.max(0, i - 1); k <= Math.min(COUNT - 1, i + 1); k++) {
                    double part = k == i ? 1 : 0.5;
                    sum += part * values[k];
                    weight += part * weights[k];
                }
                means[i] = sum / weight;
            }
            return new LimbProfile(means);
        }
    }
}
