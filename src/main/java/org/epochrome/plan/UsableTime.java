package org.epochrome.plan;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.epochrome.plan.night.Interval;
import org.epochrome.plan.night.Night;
import org.epochrome.plan.night.QuarterHour;

/**
 * The time in which a planet is recorded.
 *
 * @param interval the one of the night's usable times in which the planet stands highest
 * @param best the sky then
 * @param recording the part of the interval in which the air mass is at most 1.2 times that at best
 */
record UsableTime(Interval interval, QuarterHour best, Interval recording) {
    /** Choice of ours: turbulence then blurs by a ninth more. */
    private static final double MOST_AIR = 1.2;

    private static final Duration QUARTER = Duration.ofMinutes(15);

    static Optional<UsableTime> of(Night night, List<Interval> usable) {
        List<UsableTime> all = new ArrayList<>();
        for (Interval interval : usable) {
            for (Instant utc : List.of(night.planet().culmination(), interval.start(), interval.end())) {
                if (interval.contains(utc)) {
                    QuarterHour sky = night.at(utc);
                    all.add(new UsableTime(interval, sky, recording(night, interval, sky)));
                }
            }
        }
        return all.stream().max(Comparator.comparingDouble(u -> u.best.altitudeDeg()));
    }

    private static Interval recording(Night night, Interval interval, QuarterHour best) {
        Instant from = later(interval.start(), best.utc().minus(QUARTER));
        Instant to = earlier(interval.end(), best.utc().plus(QUARTER));
        double most = MOST_AIR * best.airMass().orElse(Double.NaN);
        for (QuarterHour hour : night.hours()) {
            if (interval.contains(hour.utc()) && hour.airMass().orElse(Double.POSITIVE_INFINITY) <= most) {
                from = earlier(from, hour.utc());
                to = later(to, hour.utc());
            }
        }
        return new Interval(from, to);
    }

    private static Instant earlier(Instant a, Instant b) {
        return a.isBefore(b) ? a : b;
    }

    private static Instant later(Instant a, Instant b) {
        return a.isAfter(b) ? a : b;
    }
}
