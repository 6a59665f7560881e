package org.epochrome.io.fits;

import java.util.Objects;

/**
 * A keyword for a FITS header.
 *
 * @param keyword at most eight capitals, digits, - or _
 * @param value a String, Boolean, Integer, Long or finite Double
 * @param comment what it is, with its unit in brackets: "[deg] angle to north"; may be empty
 */
public record FitsCard(String keyword, Object value, String comment) {
    public FitsCard {
        Objects.requireNonNull(comment);
        if (!keyword.matches("[A-Z0-9_-]{1,8}")) {
            throw new IllegalArgumentException("'" + keyword + "' is not a FITS keyword.");
        }
        boolean number =
                value instanceof Integer || value instanceof Long || (value instanceof Double d && Double.isFinite(d));
        if (!number && !(value instanceof String) && !(value instanceof Boolean)) {
            throw new IllegalArgumentException(keyword + " cannot hold " + value + ".");
        }
    }
}
