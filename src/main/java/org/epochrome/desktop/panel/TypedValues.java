package org.epochrome.desktop.panel;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;

/** Reads what people type for angles on the Earth, lengths of recordings and offsets of clocks. */
public final class TypedValues {
    private static final String NUMBER = "(\\d+(?:\\.\\d+)?)";
    private static final Pattern ANGLE = Pattern.compile("([NSEW]?)\\s*([-+]?)\\s*" + NUMBER + "(?:[\\s°:]+" + NUMBER
            + "(?:[\\s':′]+" + NUMBER + ")?)?[\\s°'\"′″]*([NSEW]?)");
    private static final Pattern MINUTES = Pattern.compile(NUMBER + "\\s*(?:m|min|minutes?)");
    private static final Pattern SECONDS = Pattern.compile(NUMBER + "\\s*(?:s|sec|seconds?)?");
    private static final Pattern BOTH = Pattern.compile("(\\d+)\\s*(?::|m|min)\\s*([0-5]?\\d)\\s*s?");
    private static final Pattern OFFSET = Pattern.compile("(?:UTC?)?\\s*([-+−]?)\\s*(\\d{1,2})(?::?([0-5]\\d))?\\s*h?");

    private TypedValues() {}

    /**
     * A latitude in degrees, north positive, from degrees, degrees and minutes, or these with seconds, with a sign or N or S.
     *
     * @throws IllegalArgumentException with a sentence if it cannot be read
     */
    public static double latitude(String text) {
        return angle(text, 'N', 'S', Texts.of("typed.latitude"));
    }

    /**
     * A longitude in degrees, east positive, written like a latitude, with a sign or E or W.
     *
     * @throws IllegalArgumentException with a sentence if it cannot be read
     */
    public static double longitude(String text) {
        return angle(text, 'E', 'W', Texts.of("typed.longitude"));
    }

    private static double angle(String text, char positive, char negative, String wrong) {
        String plain = text.strip().toUpperCase(Locale.ROOT).replace('−', '-').replaceAll("(\\d),(\\d)", "$1.$2");
        Matcher m = ANGLE.matcher(plain);
        if (!m.matches() || (!m.group(1).isEmpty() && !m.group(6).isEmpty())) {
            throw new IllegalArgumentException(wrong);
        }
        String letter = m.group(1) + m.group(6);
        double minutes = m.group(4) == null ? 0 : Double.parseDouble(m.group(4));
        double seconds = m.group(5) == null ? 0 : Double.parseDouble(m.group(5));
        boolean known = letter.isEmpty() || letter.charAt(0) == positive || letter.charAt(0) == negative;
        if (!known || minutes >= 60 || seconds >= 60) {
            throw new IllegalArgumentException(wrong);
        }
        boolean minus = m.group(2).equals("-") != (!letter.isEmpty() && letter.charAt(0) == negative);
        double size = Double.parseDouble(m.group(3)) + minutes / 60 + seconds / 3600;
        return Math.rint(1e6 * (minus ? -size : size)) / 1e6;
    }

    /**
     * The length of a recording: seconds, minutes ("2 min"), or both ("1:30").
     *
     * @throws IllegalArgumentException with a sentence if it cannot be read or is not longer than zero
     */
    public static Duration length(String text) {
        String plain = text.strip().toLowerCase(Locale.ROOT).replace(',', '.');
        Matcher both = BOTH.matcher(plain);
        Matcher minutes = MINUTES.matcher(plain);
        Matcher seconds = SECONDS.matcher(plain);
        double s = both.matches()
                ? 60 * Double.parseDouble(both.group(1)) + Double.parseDouble(both.group(2))
                : minutes.matches()
                        ? 60 * Double.parseDouble(minutes.group(1))
                        : seconds.matches() ? Double.parseDouble(seconds.group(1)) : 0;
        if (!(s > 0 && s <= 86_400)) {
            throw new IllegalArgumentException(Texts.of("typed.length"));
        }
        return Duration.ofMillis(Math.round(1000 * s));
    }

    /** A length as {@link #length} reads it. */
    public static String text(Duration length) {
        return Texts.of("typed.length.text", Numbers.plain(length.toMillis() / 1000.0));
    }

    /**
     * How far a clock is ahead of UTC: "+2", "+02:00", "UTC-3:30"; 0 or UTC for not at all.
     *
     * @throws IllegalArgumentException with a sentence if it cannot be read
     */
    public static ZoneOffset offset(String text) {
        String plain = text.strip().toUpperCase(Locale.ROOT);
        if (plain.isEmpty() || plain.equals("UTC") || plain.equals("UT") || plain.equals("Z")) {
            return ZoneOffset.UTC;
        }
        Matcher m = OFFSET.matcher(plain);
        try {
            if (m.matches()) {
                int sign = m.group(1).isEmpty() || m.group(1).equals("+") ? 1 : -1;
                int minutes = m.group(3) == null ? 0 : Integer.parseInt(m.group(3));
                return ZoneOffset.ofHoursMinutes(sign * Integer.parseInt(m.group(2)), sign * minutes);
            }
        } catch (DateTimeException e) {
            // refused below
        }
        throw new IllegalArgumentException(Texts.of("typed.offset"));
    }
}
