package org.epochrome.plan;

import java.time.Duration;
import java.util.Locale;

/** Numbers with their units, for people. */
public final class Quantity {
    /** In place of what is not known or does not happen. */
    public static final String NONE = "\u2013";

    private static final double LONG_S = 6000;

    private Quantity() {}

    public static String deg(double value, int digits) {
        return number(value, digits) + "\u00b0";
    }

    public static String arcsec(double value, int digits) {
        return number(value, digits) + "\u2033";
    }

    /** A speed; slow planets need more digits. */
    public static String arcsecPerMin(double value) {
        return arcsec(value, value < 0.01 ? 5 : 3) + "/min";
    }

    public static String pxPerMin(double value) {
        return number(value, value < 0.1 ? 4 : 2) + " px/min";
    }

    public static String px(double value) {
        return number(value, Math.abs(value) < 10 ? 2 : 1) + " px";
    }

    /** Up to 100 minutes in minutes and seconds, beyond in hours. */
    public static String time(double seconds) {
        if (!Double.isFinite(seconds)) {
            return NONE;
        }
        if (seconds >= LONG_S) {
            return number(seconds / 3600, 1) + " h";
        }
        long whole = Math.round(seconds);
        return whole < 60 ? whole + " s" : whole / 60 + " min" + (whole % 60 == 0 ? "" : " " + whole % 60 + " s");
    }

    public static String time(Duration length) {
        return time(length.toMillis() / 1000.0);
    }

    public static String percent(double part) {
        return number(100 * part, 0) + " %";
    }

    /** A factor: 1.25 times. */
    public static String times(double factor) {
        return Double.isFinite(factor) ? number(factor, 2) + "\u00d7" : NONE;
    }

    /** With a true minus sign; zero has no sign. */
    public static String number(double value, int digits) {
        String text = String.format(Locale.ROOT, "%." + digits + "f", value);
        boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return (zero ? text.replace("-", "") : text).replace('-', '\u2212');
    }
}
