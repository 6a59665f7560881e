package org.epochrome.plan;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/**
 * How instants are written for people.
 *
 * @param offset of the clock from UTC
 */
public record Clock(ZoneOffset offset) {
    private static final DateTimeFormatter MINUTES = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter SECONDS = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

    /** To the nearest minute: 21:14. */
    public String minutes(Instant utc) {
        return MINUTES.format(
                utc.plusSeconds(30).truncatedTo(ChronoUnit.MINUTES).atOffset(offset));
    }

    /** To the nearest second: 21:14:05. */
    public String seconds(Instant utc) {
        return SECONDS.format(
                utc.plusMillis(500).truncatedTo(ChronoUnit.SECONDS).atOffset(offset));
    }

    /** To the nearest minute with the name of the clock: 21:14 UTC+02:00. */
    public String at(Instant utc) {
        return minutes(utc) + " " + name();
    }

    /** UTC, or UTC+02:00. */
    public String name() {
        return offset.equals(ZoneOffset.UTC) ? "UTC" : "UTC" + offset.getId();
    }
}
