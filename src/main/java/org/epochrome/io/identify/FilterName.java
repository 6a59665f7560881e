package org.epochrome.io.identify;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;

/**
 * A filter that is called by its wavelength: F467M, 656nm, 600-690nm, Ha 7nm, CH4 889, IR742.
 *
 * <p>The letter of space-telescope names tells the kind of filter, not its width. The typical widths used here, as parts of
 * the wavelength, are the means over the rectangular widths of such filters in the WFC3 Instrument Handbook (STScI), table
 * 6.2, rounded: N 1 %, M 8 % (4 to 12 %), W 25 %, X 35 %. Numbers below 200 in these names count in tens of nanometres.
 * Wavelengths of emission lines are those in air (NIST Atomic Spectra Database).
 *
 * @param band its band; the name is the same however it was written
 * @param widthStated whether the name gives its width too; otherwise the width is that of its kind
 */
record FilterName(Band band, boolean widthStated) {
    /** Width of a filter for an emission line, or around a wavelength without more, nm; common practice, no source. */
    private static final double LINE_WIDTH_NM = 7;
    /** Where silicon stops to see, nm. */
    private static final double SILICON_END_NM = 1050;

    private static final double TENS_OF_NM_BELOW = 200;
    private static final double METHANE_WIDTH = 0.01;

    private static final String CENTRE = "([1-9]\\d{2,3}(?:\\.\\d+)?)";
    private static final String WIDTH = "(\\d{1,2}(?:\\.\\d+)?) ?NM";
    private static final Pattern SPACE = Pattern.compile("(FQ? ?([1-9]\\d{2,3}))(N|M|W|X|LP)");
    private static final Pattern VALUE = Pattern.compile(CENTRE + " ?(?:NM|(?= \\d))(?: " + WIDTH + ")?");
    private static final Pattern RANGE = Pattern.compile(CENTRE + " ?(?:NM)? " + CENTRE + " ?NM");
    private static final Pattern METHANE =
            Pattern.compile("(?:CH4|METHANE)(?: BAND)? ?" + CENTRE + " ?(?:NM)?(?: " + WIDTH + ")?");
    private static final Pattern INFRARED = Pattern.compile("IR ?(?:PASS ?)?([6-9]\\d\\d|1000) ?(?:NM)?");
    private static final String LINE_TAIL = "(?: ?" + CENTRE + " ?(?:NM)?)?(?: ?" + WIDTH + ")?";
    private static final List<Line> LINES = List.of(
            new Line("Ha", 656.28, "HA|H ?ALPHA"),
            new Line("Hb", 486.13, "HB|H ?BETA"),
            new Line("OIII", 500.68, "O ?III"),
            new Line("NII", 658.34, "N ?II"),
            // The middle of a pair.
            new Line("SII", 672.4, "S ?II"));

    /** An emission line: its usual name, wavelength and the ways to write it. */
    private record Line(String name, double nm, Pattern pattern) {
        Line(String name, double nm, String spellings) {
            this(name, nm, Pattern.compile("(?:" + spellings + ")" + LINE_TAIL));
        }
    }

    /** The filter that a text names as a whole; empty if it names none by a wavelength. */
    static Optional<FilterName> of(String text) {
        String plain = text.replace("\u03b1", "alpha")
                .replace("\u03b2", "beta")
                .toUpperCase(Locale.ROOT)
                .replaceAll("[^A-Z0-9.]+", " ")
                .strip();
        return space(plain)
                .or(() -> methane(plain))
                .or(() -> infrared(plain))
                .or(() -> range(plain))
                .or(() -> value(plain))
                .or(() -> line(plain));
    }

    private static Optional<FilterName> space(String text) {
        Matcher m = SPACE.matcher(text);
        if (!m.matches()) {
            return Optional.empty();
        }
        double number = Double.parseDouble(m.group(2));
        double nm = number < TENS_OF_NM_BELOW ? 10 * number : number;
        String name = m.group(1).replace(" ", "") + m.group(3);
        return switch (m.group(3)) {
            case "N" -> around(name, nm, 0.01 * nm, false);
            case "M" -> around(name, nm, 0.08 * nm, false);
            case "W" -> around(name, nm, 0.25 * nm, false);
            case "X" -> around(name, nm, 0.35 * nm, false);
            default -> between(name, nm, Math.max(SILICON_END_NM, 1.1 * nm), false);
        };
    }

    /** Methane has bands elsewhere too; the one at 889 nm is meant by default. */
    private static Optional<FilterName> methane(String text) {
        Matcher m = METHANE.matcher(text);
        if (!m.matches()) {
            return Optional.empty();
        }
        double nm = Double.parseDouble(m.group(1));
        Passband usual = Band.CH4.passband();
        boolean same = nm >= usual.fromNm() && nm <= usual.toNm();
        String name = same ? Band.CH4.name() : Band.CH4.name() + "-" + m.group(1);
        if (m.group(2) != null) {
            return around(name, nm, Double.parseDouble(m.group(2)), true);
        }
        return same ? Optional.of(new FilterName(Band.CH4, false)) : around(name, nm, METHANE_WIDTH * nm, false);
    }

    /** A long-pass filter called by its edge. */
    private static Optional<FilterName> infrared(String text) {
        Matcher m = INFRARED.matcher(text);
        if (!m.matches()) {
            return Optional.empty();
        }
        double edge = Double.parseDouble(m.group(1));
        double end = Band.IR.passband().toNm();
        // The name gives one edge; the other one is the camera's.
        return between(Band.IR.name(), edge, edge < end - 50 ? end : SILICON_END_NM, true);
    }

    private static Optional<FilterName> range(String text) {
        Matcher m = RANGE.matcher(text);
        return m.matches()
                ? between(
                        m.group(1) + "-" + m.group(2) + "nm",
                        Double.parseDouble(m.group(1)),
                        Double.parseDouble(m.group(2)),
                        true)
                : Optional.empty();
    }

    private static Optional<FilterName> value(String text) {
        Matcher m = VALUE.matcher(text);
        if (!m.matches()) {
            return Optional.empty();
        }
        double nm = Double.parseDouble(m.group(1));
        return nm >= 300 && nm <= 1100 ? around(m.group(1) + "nm", nm, m.group(2)) : Optional.empty();
    }

    private static Optional<FilterName> line(String text) {
        for (Line line : LINES) {
            Matcher m = line.pattern.matcher(text);
            if (m.matches()) {
                double nm = m.group(1) == null ? line.nm : Double.parseDouble(m.group(1));
                return around(line.name, nm, m.group(2));
            }
        }
        return Optional.empty();
    }

    private static Optional<FilterName> around(String name, double nm, String width) {
        return around(name, nm, width == null ? LINE_WIDTH_NM : Double.parseDouble(width), width != null);
    }

    private static Optional<FilterName> around(String name, double nm, double widthNm, boolean stated) {
        return between(name, nm - 0.5 * widthNm, nm + 0.5 * widthNm, stated);
    }

    private static Optional<FilterName> between(String name, double fromNm, double toNm, boolean stated) {
        return Passband.isValid(fromNm, toNm)
                ? Optional.of(new FilterName(new Band(name, new Passband(fromNm, toNm)), stated))
                : Optional.empty();
    }
}
