package org.epochrome.io.write;

import java.time.Instant;

/**
 * Something in a calendar.
 *
 * @param start UTC
 * @param end UTC; the start for what has no length
 * @param title one line
 * @param description more lines, may be empty
 */
public record CalendarEntry(Instant start, Instant end, String title, String description) {}
