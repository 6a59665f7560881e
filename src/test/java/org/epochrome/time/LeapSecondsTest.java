package org.epochrome.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import org.epochrome.truth.TruthTable;
import org.junit.jupiter.api.Test;

class LeapSecondsTest {
    /** 1900-01-01 to 1970-01-01. */
    private static final long NTP_TO_UNIX_S = 2208988800L;

    @Test
    void agreesWithTheListOfTheIers() {
        List<String> lines = TruthTable.lines("time/leap-seconds-ntp.txt");
        assertEquals(28, lines.size());
        int before = 9;
        for (String line : lines) {
            int space = line.indexOf(' ');
            Instant from = Instant.ofEpochSecond(Long.parseLong(line.substring(0, space)) - NTP_TO_UNIX_S);
            int expected = Integer.parseInt(line.substring(space + 1));
            assertEquals(before + 1, expected, "the list grows by one");
            assertEquals(expected, LeapSeconds.taiMinusUtcS(from), line);
            if (expected > 10) {
                assertEquals(before, LeapSeconds.taiMinusUtcS(from.minusNanos(1)), line);
            }
            before = expected;
        }
    }

    @Test
    void saysWhereTheTableHolds() {
        assertFalse(LeapSeconds.covers(Instant.parse("1971-12-31T23:59:59Z")));
        assertTrue(LeapSeconds.covers(Instant.parse("1972-01-01T00:00:00Z")));
        assertTrue(LeapSeconds.covers(LeapSeconds.validUntil().minusNanos(1)));
        assertFalse(LeapSeconds.covers(LeapSeconds.validUntil()));
    }

    @Test
    void theLastValueGoesOn() {
        assertEquals(37, LeapSeconds.taiMinusUtcS(Instant.parse("2100-01-01T00:00:00Z")));
    }

    @Test
    void thereAreNoneBefore1972() {
        var refused = assertThrows(
                IllegalArgumentException.class, () -> LeapSeconds.taiMinusUtcS(Instant.parse("1971-12-31T23:59:59Z")));
        assertTrue(refused.getMessage().contains("1971-12-31T23:59:59Z"));
    }
}
