package org.epochrome.plan.night;

import java.time.Duration;
import java.time.Instant;
import java.util.function.Function;

/**
 * Quantities that change smoothly, computed at equal steps and interpolated by cubics through the four nearest (Lagrange). For a
 * sine of amplitude 1 and angular frequency w the error is at most 0.0234 (w step)^4.
 */
final class Track {
    private final Instant start;
    private final double stepS;
    private final double[][] values;

    private Track(Instant start, double stepS, double[][] values) {
        this.start = start;
        this.stepS = stepS;
        this.values = values;
    }

    /**
     * Computes the quantities over an interval and two steps beyond it.
     *
     * @param quantities at an instant, always as many
     */
    static Track of(Interval interval, Duration step, Function<Instant, double[]> quantities) {
        long steps = interval.duration().dividedBy(step) + 1;
        Instant start = interval.start().minus(step);
        double[][] values = new double[(int) steps + 3][];
        for (int i = 0; i < values.length; i++) {
            values[i] = quantities.apply(start.plus(step.multipliedBy(i)));
        }
        return new Track(start, step.toMillis() / 1000.0, values);
    }

    /** Makes an angle in degrees that grows by less than a full turn a step continuous, so that it can be interpolated. */
    Track unwrapped(int quantity) {
        for (int i = 1; i < values.length; i++) {
            double growth = (values[i][quantity] - values[i - 1][quantity]) % 360;
            values[i][quantity] = values[i - 1][quantity] + (growth < 0 ? growth + 360 : growth);
        }
        return this;
    }

    /** All quantities at an instant within the interval. */
    double[] at(Instant utc) {
        Duration since = Duration.between(start, utc);
        double position = (since.getSeconds() + 1e-9 * since.getNano()) / stepS;
        int first = (int) Math.floor(position) - 1;
        if (first < 0 || first + 3 >= values.length) {
            throw new IllegalArgumentException(utc + " lies outside of the track");
        }
        double x = position - first - 1;
        double[] weights = {
            -x * (x - 1) * (x - 2) / 6,
            (x + 1) * (x - 1) * (x - 2) / 2,
            -(x + 1) * x * (x - 2) / 2,
            (x + 1) * x * (x - 1) / 6
        };
        double[] result = new double[values[first].length];
        for (int k = 0; k < weights.length; k++) {
            for (int i = 0; i < result.length; i++) {
                result[i] += weights[k] * values[first + k][i];
            }
        }
        return result;
    }
}
