package org.epochrome.plan.night;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.ephemeris.Body;
import org.epochrome.text.Message;

/** What the user should know of a night before anything else. */
final class NightWarnings {
    // as the ephemeris states it
    private static final int FIRST_SENSIBLE_YEAR = 1600;
    private static final int LAST_SENSIBLE_YEAR = 2200;
    private static final int FIRST_TESTED_YEAR = 1950;
    private static final int LAST_TESTED_YEAR = 2100;

    private NightWarnings() {}

    static List<Message> of(
            Body body, LocalDate date, Interval dark, SunTimes sun, List<Interval> usable, SunCaution caution) {
        List<Message> warnings = new ArrayList<>();
        int year = date.getYear();
        if (year < FIRST_SENSIBLE_YEAR || year > LAST_SENSIBLE_YEAR) {
            warnings.add(Message.of("night.invalid", FIRST_SENSIBLE_YEAR, LAST_SENSIBLE_YEAR, date));
        } else if (year < FIRST_TESTED_YEAR || year > LAST_TESTED_YEAR) {
            warnings.add(Message.of("night.untested", FIRST_TESTED_YEAR, LAST_TESTED_YEAR, date));
        }
        if (caution == SunCaution.TOO_NEAR) {
            warnings.add(Message.of("night.tooNearSun", body.displayName()));
        } else if (caution == SunCaution.NEAR) {
            warnings.add(Message.of("night.nearSun", body.displayName()));
        }
        if (dark.duration().isZero()) {
            warnings.add(Message.of("night.sunDoesNotSet"));
        } else if (usable.isEmpty()) {
            warnings.add(Message.of("night.neverAbove", body.displayName()));
        }
        if (!dark.duration().isZero() && sun.sunset().isEmpty() && sun.sunrise().isEmpty()) {
            warnings.add(Message.of("night.sunDoesNotRise"));
        }
        return warnings;
    }
}
