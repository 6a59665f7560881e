package org.epochrome.document;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Compares what a document shows with what was printed. */
final class Printed {
    private static final Pattern NUMBER = Pattern.compile("\\d+\\.(\\d+)");
    private static final String PLACEHOLDER = "\0";

    private Printed() {}

    /** Whether the lines shown stand somewhere in the output one after the other. */
    static boolean shows(List<String> shown, List<String> printed) {
        for (int start = 0; start + shown.size() <= printed.size(); start++) {
            int same = 0;
            while (same < shown.size() && same(shown.get(same), printed.get(start + same))) {
                same++;
            }
            if (same == shown.size()) {
                return true;
            }
        }
        return false;
    }

    /** Words are equal; numbers with a decimal point differ in their last digit at most, by less than one of the digit before. */
    static boolean same(String shown, String printed) {
        String a = normal(shown);
        String b = normal(printed);
        if (!NUMBER.matcher(a).replaceAll(PLACEHOLDER).equals(NUMBER.matcher(b).replaceAll(PLACEHOLDER))) {
            return false;
        }
        Matcher one = NUMBER.matcher(a);
        Matcher other = NUMBER.matcher(b);
        while (one.find() && other.find()) {
            int decimals = one.group(1).length();
            double last = Math.pow(10, -decimals);
            if (decimals != other.group(1).length()
                    || Math.abs(Double.parseDouble(one.group()) - Double.parseDouble(other.group())) > 9.5 * last) {
                return false;
            }
        }
        return true;
    }

    /** Spaces of a width, and a sign that numbers near zero may lose. */
    private static String normal(String line) {
        return line.strip().replaceAll("\\s+", " ");
    }
}
