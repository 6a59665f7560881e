package org.epochrome.time;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;

/**
 * When a recording ran.
 *
 * @param start UTC of its first frame
 * @param end UTC of its last frame, not before the start
 */
public record RecordingSpan(Instant start, Instant end) {
    public RecordingSpan {
        Objects.requireNonNull(start);
        Objects.requireNonNull(end);
        if (end.isBefore(start)) {
            throw new IllegalArgumentException(
                    "A recording cannot end (" + end + ") before it starts (" + start + ").");
        }
    }

    /** Halfway between start and end: the instant that the stack shows. */
    public Instant mid() {
        return start.plus(duration().dividedBy(2));
    }

    public Duration duration() {
        return Duration.between(start, end);
    }
}
