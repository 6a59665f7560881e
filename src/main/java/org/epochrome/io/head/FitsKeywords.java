package org.epochrome.io.head;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The keywords of a FITS header with their values as text, without quotes. Of a keyword that occurs twice the first
 * counts.
 */
public final class FitsKeywords {
    /** No keywords: the header of a file that has none. */
    public static final FitsKeywords NONE = new FitsKeywords(Map.of());

    private final Map<String, String> values;

    /** Keywords in capitals, with their values. */
    public FitsKeywords(Map<String, String> values) {
        this.values = Map.copyOf(values);
    }

    /** The value of a keyword, stripped; empty if it is absent or blank. */
    public Optional<String> text(String keyword) {
        return Optional.ofNullable(values.get(keyword)).map(String::strip).filter(v -> !v.isEmpty());
    }

    /** The exact value of a keyword that holds a number; empty if it is absent or no number. */
    public Optional<BigDecimal> number(String keyword) {
        return text(keyword).flatMap(FitsKeywords::parse);
    }

    /** These keywords, and those of another header which these do not have. */
    public FitsKeywords over(FitsKeywords inherited) {
        Map<String, String> both = new LinkedHashMap<>(inherited.values);
        both.putAll(values);
        return new FitsKeywords(both);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FitsKeywords k && values.equals(k.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    private static Optional<BigDecimal> parse(String text) {
        try {
            // FITS allows D as the exponent letter of double precision (FITS Standard 4.0, section 4.2.4).
            BigDecimal number = new BigDecimal(text.toUpperCase(Locale.ROOT).replace('D', 'E'));
            // Digits beyond the range of a double are damage, and arithmetic with them would never end.
            return Double.isFinite(number.doubleValue()) && Math.abs((long) number.scale()) < 400
                    ? Optional.of(number)
                    : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }
}
