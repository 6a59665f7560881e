package org.epochrome.time;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.text.Message;

/** UTC instants as people and files write them: ISO 8601, such as {@code 2024-12-18T19:24:30Z}. */
public final class UtcText {
    private static final Pattern FORM = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})[Tt ](\\d{2}):(\\d{2})"
            + "(?::(\\d{2})(?:[.,](\\d{1,9})\\d*)?)? ?(?:[Zz]|([+-])(\\d{2})(?::?(\\d{2}))?)?");

    private UtcText() {}

    /**
     * The instant that an ISO 8601 text names. Without an offset it is UTC; seconds and fraction may be missing, a space
     * may stand for the T. A leap second (23:59:60) counts as the second after it, as Java's time line has none.
     *
     * @throws IllegalArgumentException one sentence for the user
     */
    public static Instant parse(String text) {
        Matcher m = FORM.matcher(text.strip());
        if (!m.matches()) {
            throw new IllegalArgumentException(Message.text("times.utc", text));
        }
        int second = m.group(6) == null ? 0 : number(m, 6);
        int leap = second == 60 && number(m, 5) == 59 ? 1 : 0;
        try {
            LocalDateTime clock = LocalDateTime.of(
                    number(m, 1), number(m, 2), number(m, 3), number(m, 4), number(m, 5), second - leap, nanos(m));
            return clock.toInstant(offset(m)).plusSeconds(leap);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(Message.text("times.noSuchTime", text), e);
        }
    }

    /** ISO 8601 with a Z, to the millisecond, without a fraction if that is zero. */
    public static String format(Instant utc) {
        return utc.plusNanos(500_000).truncatedTo(ChronoUnit.MILLIS).toString();
    }

    private static int number(Matcher m, int group) {
        return Integer.parseInt(m.group(group));
    }

    private static int nanos(Matcher m) {
        String digits = m.group(7);
        return digits == null ? 0 : Integer.parseInt(digits + "0".repeat(9 - digits.length()));
    }

    private static ZoneOffset offset(Matcher m) {
        if (m.group(8) == null) {
            return ZoneOffset.UTC;
        }
        int sign = m.group(8).equals("-") ? -1 : 1;
        return ZoneOffset.ofHoursMinutes(sign * number(m, 9), m.group(10) == null ? 0 : sign * number(m, 10));
    }
}
