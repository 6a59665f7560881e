package org.epochrome.time;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.epochrome.text.Message;

/**
 * The leap-second table: TAI - UTC since 1972, from IERS Bulletin C (resource {@code leap-seconds.txt}). Exact inside
 * {@link #covers}; after its end the last value goes on, wrong by the leap seconds that have come since, if any.
 */
public final class LeapSeconds {
    private static final String RESOURCE = "leap-seconds.txt";
    private static final String END_KEY = "valid-until";

    private static final NavigableMap<Instant, Integer> TABLE = new TreeMap<>();
    private static final Instant VALID_UNTIL = load();

    private LeapSeconds() {}

    /** 1972-01-01, when UTC began to keep whole seconds from TAI. */
    public static Instant validFrom() {
        return TABLE.firstKey();
    }

    /** The end of what the IERS had announced when the table was made. */
    public static Instant validUntil() {
        return VALID_UNTIL;
    }

    /** Whether the table is known to hold at that instant. */
    public static boolean covers(Instant utc) {
        return !utc.isBefore(validFrom()) && utc.isBefore(VALID_UNTIL);
    }

    /**
     * TAI - UTC, whole seconds.
     *
     * @throws IllegalArgumentException before 1972
     */
    public static int taiMinusUtcS(Instant utc) {
        var entry = TABLE.floorEntry(utc);
        if (entry == null) {
            throw new IllegalArgumentException(Message.text("times.noLeapSeconds", utc));
        }
        return entry.getValue();
    }

    private static Instant load() {
        Instant end = Instant.MIN;
        for (String line : lines()) {
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            int space = line.indexOf(' ');
            String key = line.substring(0, space);
            String value = line.substring(space + 1);
            if (key.equals(END_KEY)) {
                end = startOf(value);
            } else {
                TABLE.put(startOf(key), Integer.valueOf(value));
            }
        }
        return end;
    }

    private static Instant startOf(String date) {
        return LocalDate.parse(date).atStartOfDay(ZoneOffset.UTC).toInstant();
    }

    private static List<String> lines() {
        try (var reader = new BufferedReader(
                new InputStreamReader(LeapSeconds.class.getResourceAsStream(RESOURCE), StandardCharsets.UTF_8))) {
            return reader.lines().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
