package org.epochrome.plan.night;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.text.Message;

/**
 * A marking whose passages over the central meridian are wanted.
 *
 * @param name for people
 * @param system of its longitude
 * @param longitudeDeg 0 to 360, planetographic; with a drift, that at the drift's date
 * @param drift how the longitude changes, if it is known to
 */
public record Feature(String name, RotationSystem system, double longitudeDeg, Optional<Drift> drift) {
    private static final String NUMBER = "\\d+(?:\\.\\d+)?";
    private static final Pattern FORM = Pattern.compile("\\s*([^=]*[^=\\s])\\s*=\\s*(?:(\\w+):)?(" + NUMBER
            + ")(?:([+-]" + NUMBER + ")@(\\d{4}-\\d{2}-\\d{2}))?\\s*");
    private static final double DAY_S = 86400;

    public Feature {
        if (!(longitudeDeg >= 0 && longitudeDeg <= 360)) {
            throw new IllegalArgumentException(Message.text("night.feature.longitude", longitudeDeg));
        }
    }

    /**
     * A steady change of longitude.
     *
     * @param degPerDay positive where the longitude grows
     * @param from when the feature had its longitude
     */
    public record Drift(double degPerDay, Instant from) {}

    /**
     * A feature as people write it: {@code NAME=SYSTEM:LON}, such as {@code spot=II:45.5}; {@code NAME=LON} for a planet with one
     * system. With a drift {@code spot=II:45.5+0.04@2026-11-01}: degrees a day, and the date (0 h UTC) of the longitude.
     *
     * @throws IllegalArgumentException one sentence for the user
     */
    public static Feature parse(String text, Body body) {
        Matcher m = FORM.matcher(text);
        if (!m.matches()) {
            throw new IllegalArgumentException(Message.text("night.feature.form", text));
        }
        return new Feature(
                m.group(1),
                system(m.group(2), body),
                Double.parseDouble(m.group(3)),
                m.group(4) == null
                        ? Optional.empty()
                        : Optional.of(new Drift(Double.parseDouble(m.group(4)), startOf(m.group(5)))));
    }

    private static RotationSystem system(String name, Body body) {
        List<RotationSystem> systems = body.systems();
        if (name == null && systems.size() == 1) {
            return systems.get(0);
        }
        return systems.stream()
                .filter(s -> s.key().equalsIgnoreCase(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(Message.text(
                        "night.feature.system",
                        body.displayName(),
                        systems.stream().map(RotationSystem::key).collect(Collectors.joining(", ")))));
    }

    private static Instant startOf(String date) {
        try {
            return LocalDate.parse(date).atStartOfDay(ZoneOffset.UTC).toInstant();
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(Message.text("night.feature.date", date), e);
        }
    }

    /** Its longitude at an instant, degrees, not reduced to a full turn. */
    public double longitudeDeg(Instant utc) {
        return longitudeDeg
                + drift.map(d -> d.degPerDay() * Duration.between(d.from(), utc).toMillis() / 1000.0 / DAY_S)
                        .orElse(0.0);
    }

    /** When it passes the central meridian in an interval of the night. */
    public List<Instant> passages(NightSky sky, Interval interval) {
        // past the meridian up to half a turn; at the far side the difference jumps from 180 to -180
        return Crossings.of(utc -> pastDeg(sky, utc), interval, Duration.ofMinutes(10)).stream()
                .filter(Crossings.Crossing::upward)
                .map(Crossings.Crossing::utc)
                .toList();
    }

    private double pastDeg(NightSky sky, Instant utc) {
        return Math.IEEEremainder(sky.centralMeridianDeg(system, utc) - longitudeDeg(utc), 360);
    }
}
