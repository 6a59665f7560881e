package org.epochrome.plan.limit;

import java.time.Duration;
import java.time.Instant;
import org.epochrome.image.Band;

/**
 * One recording of a sequence.
 *
 * @param set to which it belongs, from 1
 * @param band filter in front of the camera
 * @param start UTC
 * @param length of the recording
 */
public record PlannedRecording(int set, Band band, Instant start, Duration length) {
    public Instant end() {
        return start.plus(length);
    }

    public Instant mid() {
        return start.plus(length.dividedBy(2));
    }
}
