package org.epochrome.session.diagnose;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.session.recipe.Exposure;

/** Whether the numbers in the names of files grow with their times. */
enum NameOrder {
    WITH_TIMES,
    AGAINST_TIMES,
    UNKNOWN;

    private static final Pattern DIGITS = Pattern.compile("\\d+");

    static NameOrder of(List<Exposure> exposures) {
        List<Exposure> sorted = new ArrayList<>(exposures);
        sorted.sort(Comparator.comparing(Exposure::mid));
        boolean grow = true;
        boolean shrink = true;
        for (int i = 1; i < sorted.size(); i++) {
            int order = compared(sorted.get(i - 1).name(), sorted.get(i).name());
            grow &= order < 0;
            shrink &= order > 0;
        }
        return grow == shrink ? UNKNOWN : grow ? WITH_TIMES : AGAINST_TIMES;
    }

    /** Names are compared by their first numbers that differ. */
    private static int compared(String one, String other) {
        Matcher here = DIGITS.matcher(one);
        Matcher there = DIGITS.matcher(other);
        while (here.find() && there.find()) {
            int order = new BigInteger(here.group()).compareTo(new BigInteger(there.group()));
            if (order != 0) {
                return order;
            }
        }
        return 0;
    }
}
