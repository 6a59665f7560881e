package org.epochrome.plan.night;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** Finds when a quantity passes zero. */
final class Crossings {
    private static final long CONVERGED_MS = 100;

    private Crossings() {}

    /**
     * A passage of zero.
     *
     * @param utc to a tenth of a second
     * @param upward whether the quantity grows
     */
    record Crossing(Instant utc, boolean upward) {}

    /**
     * All crossings in an interval, by time. Between two steps the quantity must not have more than one extremum; one that touches
     * zero there and turns back is found.
     */
    static List<Crossing> of(ToDoubleFunction<Instant> quantity, Interval interval, Duration step) {
        List<Instant> instants = new ArrayList<>();
        for (Instant t = interval.start(); t.isBefore(interval.end()); t = t.plus(step)) {
            instants.add(t);
        }
        instants.add(interval.end());
        double[] values = instants.stream().mapToDouble(quantity).toArray();
        List<Crossing> found = new ArrayList<>();
        for (int i = 1; i < values.length; i++) {
            Instant from = instants.get(i - 1);
            Instant to = instants.get(i);
            if (values[i - 1] < 0 != values[i] < 0) {
                found.add(between(quantity, from, to, values[i] >= 0));
            } else if (approaches(values, i)) {
                turningPoint(quantity, from, to, values[i] < 0).ifPresent(turn -> {
                    boolean upward = quantity.applyAsDouble(turn) >= 0;
                    found.add(between(quantity, from, turn, upward));
                    found.add(between(quantity, turn, to, !upward));
                });
            }
        }
        return found;
    }

    /** The first crossing of one direction. */
    static Optional<Instant> first(List<Crossing> crossings, boolean upward) {
        return crossings.stream().filter(c -> c.upward == upward).findFirst().map(Crossing::utc);
    }

    /** The last crossing of one direction. */
    static Optional<Instant> last(List<Crossing> crossings, boolean upward) {
        return crossings.stream()
                .filter(c -> c.upward == upward)
                .reduce((earlier, later) -> later)
                .map(Crossing::utc);
    }

    /** The stretches of an interval in which the quantity is not negative. */
    static List<Interval> within(ToDoubleFunction<Instant> quantity, Interval interval, Duration step) {
        List<Interval> stretches = new ArrayList<>();
        Instant since = quantity.applyAsDouble(interval.start()) >= 0 ? interval.start() : null;
        for (Crossing crossing : of(quantity, interval, step)) {
            if (crossing.upward) {
                since = crossing.utc;
            } else if (since != null) {
                stretches.add(new Interval(since, crossing.utc));
                since = null;
            }
        }
        if (since != null && since.isBefore(interval.end())) {
            stretches.add(new Interval(since, interval.end()));
        }
        return stretches;
    }

    /** Whether a quantity that keeps its sign may have its smallest size in the step before a sample. */
    private static boolean approaches(double[] values, int i) {
        double left = Math.abs(values[i - 1]);
        double right = Math.abs(values[i]);
        return (i < 2 || Math.abs(values[i - 2]) >= left)
                && (i + 1 == values.length || Math.abs(values[i + 1]) >= right);
    }

    /** Where a quantity of one sign comes nearest to zero, if it passes it there. */
    private static Optional<Instant> turningPoint(
            ToDoubleFunction<Instant> quantity, Instant from, Instant to, boolean negative) {
        Instant a = from;
        Instant b = to;
        while (Duration.between(a, b).toMillis() > CONVERGED_MS) {
            long thirdMs = Duration.between(a, b).toMillis() / 3;
            Instant left = a.plusMillis(thirdMs);
            Instant right = b.minusMillis(thirdMs);
            boolean leftNearer = (quantity.applyAsDouble(left) > quantity.applyAsDouble(right)) == negative;
            if (leftNearer) {
                b = right;
            } else {
                a = left;
            }
        }
        return (quantity.applyAsDouble(a) < 0) == negative ? Optional.empty() : Optional.of(a);
    }

    private static Crossing between(ToDoubleFunction<Instant> quantity, Instant from, Instant to, boolean upward) {
        Instant a = from;
        Instant b = to;
        while (Duration.between(a, b).toMillis() > CONVERGED_MS) {
            Instant middle = a.plusMillis(Duration.between(a, b).toMillis() / 2);
            if ((quantity.applyAsDouble(middle) >= 0) == upward) {
                b = middle;
            } else {
                a = middle;
            }
        }
        return new Crossing(b, upward);
    }
}
