package org.epochrome.desktop.state;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.read.DatedFrame;

/**
 * What was planned for a night.
 *
 * @param body the planet
 * @param from noon before it
 * @param until noon after it
 * @param lengths longest recordings by band
 */
public record PlannedNight(Body body, Instant from, Instant until, Map<String, Duration> lengths) {
    public PlannedNight {
        lengths = Map.copyOf(lengths);
    }

    /** The lengths, if frames show this planet in this night; else none. */
    public Map<String, Duration> lengthsFor(Body shown, List<DatedFrame> frames) {
        boolean same = shown == body
                && frames.stream()
                        .map(f -> f.timing().span().mid())
                        .allMatch(mid -> !mid.isBefore(from) && !mid.isAfter(until));
        return same ? lengths : Map.of();
    }
}
