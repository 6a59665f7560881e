package org.epochrome.session.diagnose;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.epochrome.text.Message;

/** By how much a recording's time is off, from the angle by which its detail is. */
final class TimeOffset {
    private static final double DAY_S = 86400;
    /** An offset that is a whole number of minutes, hours or days within its error is taken for one. */
    private static final double[] ROUND_S = {DAY_S, 3600, 300, 60};

    private static final int MOST_TURNS = 12;

    private TimeOffset() {}

    /**
     * The offset that puts a recording nearest to others.
     *
     * @param offDeg by how much its detail lies east of where its time puts it
     * @param eastwardDegPerDay how fast detail moves east; negative towards the west
     * @param sigmaDeg standard error of the angle
     * @param stated its time
     * @param others the times of the frames that agree
     * @return by how much its true time is later than stated
     */
    static Duration of(double offDeg, double eastwardDegPerDay, double sigmaDeg, Instant stated, List<Instant> others) {
        double periodS = Math.abs(360 / eastwardDegPerDay) * DAY_S;
        double firstS = offDeg / eastwardDegPerDay * DAY_S;
        double sigmaS = Math.abs(sigmaDeg / eastwardDegPerDay) * DAY_S;
        double best = firstS;
        double nearest = Double.POSITIVE_INFINITY;
        for (int turns = -MOST_TURNS; turns <= MOST_TURNS; turns++) {
            double offset = firstS + turns * periodS;
            Instant there = stated.plusMillis(Math.round(1000 * offset));
            double away = others.stream()
                    .mapToDouble(o -> Math.abs(Duration.between(o, there).toMillis() / 1000.0))
                    .min()
                    .orElse(0);
            if (away < nearest) {
                nearest = away;
                best = offset;
            }
        }
        return rounded(best, sigmaS);
    }

    private static Duration rounded(double offsetS, double sigmaS) {
        for (double step : ROUND_S) {
            double whole = step * Math.rint(offsetS / step);
            if (whole != 0 && Math.abs(whole - offsetS) < Math.max(2 * sigmaS, 1)) {
                return Duration.ofSeconds(Math.round(whole));
            }
        }
        return Duration.ofSeconds(Math.round(offsetS));
    }

    /** How long a duration is, whichever its sign, in words. */
    static Message words(Duration offset) {
        long s = Math.abs(offset.toSeconds());
        if (s % 86400 == 0) {
            return s == 86400 ? Message.of("span.day") : Message.of("span.days", s / 86400);
        }
        if (s % 3600 == 0) {
            return s == 3600 ? Message.of("span.hour") : Message.of("span.hours", s / 3600);
        }
        if (s > 3 * 3600) {
            return Message.of("span.partsOfHours", s / 3600.0);
        }
        if (s % 60 == 0) {
            return s == 60 ? Message.of("span.minute") : Message.of("span.minutes", s / 60);
        }
        return s > 600 ? Message.of("span.minutes", Math.round(s / 60.0)) : Message.of("span.seconds", s);
    }
}
