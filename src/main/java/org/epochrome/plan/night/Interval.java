package org.epochrome.plan.night;

import java.time.Duration;
import java.time.Instant;

/**
 * A stretch of time.
 *
 * @param start UTC
 * @param end UTC, not before the start
 */
public record Interval(Instant start, Instant end) {
    public Interval {
        if (end.isBefore(start)) {
            throw new IllegalArgumentException("an interval cannot end (" + end + ") before it starts (" + start + ")");
        }
    }

    public Duration duration() {
        return Duration.between(start, end);
    }

    /** Whether an instant lies within, ends included. */
    public boolean contains(Instant utc) {
        return !utc.isBefore(start) && !utc.isAfter(end);
    }
}
