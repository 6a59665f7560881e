package org.epochrome.time;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import org.epochrome.text.Message;

/**
 * When a recording ran.
 *
 * @param start UTC of its first frame
 * @param end UTC of its last frame, not before the start
 */
public record RecordingSpan(Instant start, Instant end) {
    private static final double SPELL_S = 1;

    public RecordingSpan {
        Objects.requireNonNull(start);
        Objects.requireNonNull(end);
        if (end.isBefore(start)) {
            throw new IllegalArgumentException(Message.text("times.recording", end, start));
        }
    }

    /** Halfway between start and end: the instant that the stack shows. */
    public Instant mid() {
        return start.plus(duration().dividedBy(2));
    }

    /**
     * Standard error of the instant that a stack of the recording's best frames shows, seconds: the mean time of the half of all
     * spells of good seeing that was stacked, drawn without putting back from n spells of a second, T / sqrt(12 n). Common practice, no
     * source.
     */
    public double midSigmaS() {
        return Math.sqrt(duration().toMillis() / 1000.0 * SPELL_S / 12);
    }

    public Duration duration() {
        return Duration.between(start, end);
    }
}
