package org.epochrome.plan.night;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.ephemeris.Sky;
import org.epochrome.text.Message;

/**
 * A night at a site: from noon to noon by the Sun.
 *
 * @param body the planet
 * @param site where
 * @param date local date on which the night begins
 * @param offset of local time
 * @param horizon what obstructs the view
 * @param midnight when the Sun passes the lower meridian, next to the clock's midnight that ends the date
 * @param dark from sunset to sunrise; from noon to noon where the Sun does not rise, and without length at midnight where it does not
 *     set
 * @param sun sunset, twilights, sunrise
 * @param planet rise, culmination and set of the planet
 * @param moon the same of the Moon
 * @param hours each full quarter of an hour of the dark interval, and the one before and after it; from noon to noon where the
 *     Sun does not set or does not rise
 * @param usable when the planet appears above the site's horizon in the dark interval
 * @param caution by the planet's elongation at midnight
 * @param warnings what the user should know: dates beyond the ephemeris, nearness to the Sun, no night, never above the horizon
 * @param sky the sky at any instant of the night
 */
public record Night(
        Body body,
        Site site,
        LocalDate date,
        ZoneOffset offset,
        Horizon horizon,
        Instant midnight,
        Interval dark,
        SunTimes sun,
        RiseAndSet planet,
        RiseAndSet moon,
        List<QuarterHour> hours,
        List<Interval> usable,
        SunCaution caution,
        List<Message> warnings,
        NightSky sky) {
    private static final Duration HALF_A_DAY = Duration.ofHours(12);
    private static final Duration USABLE_STEP = Duration.ofMinutes(5);
    private static final int QUARTER_S = 900;
    private static final double DEG_PER_HOUR = 15;

    public Night {
        hours = List.copyOf(hours);
        usable = List.copyOf(usable);
        warnings = List.copyOf(warnings);
    }

    /**
     * Computes a night. Its numbers are sensible from 1600 to 2200 and tested from 1950 to 2100; the warnings say so outside of that.
     *
     * @param date local date on which the night begins
     */
    public static Night of(Body body, Site site, LocalDate date, ZoneOffset offset, Horizon horizon) {
        Instant midnight =
                solarMidnight(site, date.plusDays(1).atStartOfDay(offset).toInstant());
        NightSky sky = NightSky.of(body, site, horizon, midnight);
        Risings risings = new Risings(sky, midnight);
        SunTimes sun = risings.sun();
        boolean sunUp = sky.horizontal(NightSky.Target.SUN, midnight).altitudeDeg() > Risings.SUNSET_DEG;
        Interval noons = new Interval(midnight.minus(HALF_A_DAY), midnight.plus(HALF_A_DAY));
        Interval dark = sunUp
                ? new Interval(midnight, midnight)
                : new Interval(sun.sunset().orElse(noons.start()), sun.sunrise().orElse(noons.end()));
        List<Interval> usable = Crossings.within(sky::clearanceDeg, dark, USABLE_STEP);
        SunCaution caution = SunCaution.at(sky.at(midnight).elongationDeg());
        return new Night(
                body,
                site,
                date,
                offset,
                horizon,
                midnight,
                dark,
                sun,
                risings.planet(),
                risings.moon(),
                quarters(sunUp ? noons : dark).map(sky::at).toList(),
                usable,
                caution,
                NightWarnings.of(body, date, dark, sun, usable, caution),
                sky);
    }

    /** The Sun's lower transit nearest to an instant. */
    private static Instant solarMidnight(Site site, Instant near) {
        Instant utc = near;
        for (int i = 0; i < 3; i++) {
            double sunDeg = Math.toDegrees(Sky.sunKm(utc, Optional.empty()).getAlpha());
            double pastDeg = Math.IEEEremainder(Sky.siderealTimeDeg(utc, site.longitudeDeg()) - sunDeg - 180, 360);
            utc = utc.minusMillis(Math.round(pastDeg / DEG_PER_HOUR * 3_600_000));
        }
        return utc;
    }

    private static Stream<Instant> quarters(Interval interval) {
        long first = Math.floorDiv(interval.start().getEpochSecond(), QUARTER_S);
        List<Instant> quarters = new ArrayList<>();
        Instant quarter = Instant.ofEpochSecond(first * QUARTER_S);
        while (quarter.isBefore(interval.end())) {
            quarters.add(quarter);
            quarter = quarter.plusSeconds(QUARTER_S);
        }
        quarters.add(quarter);
        return quarters.stream();
    }

    /** The offset of mean solar time in full hours, for sites whose time zone is not given. */
    public static ZoneOffset solarOffset(Site site) {
        return ZoneOffset.ofHours((int) Math.round(Math.IEEEremainder(site.longitudeDeg(), 360) / DEG_PER_HOUR));
    }

    /** The planet and the sky at an instant, up to 26 hours from midnight. */
    public QuarterHour at(Instant utc) {
        return sky.at(utc);
    }

    /** Whether the planet appears above the site's horizon between sunset and sunrise. */
    public boolean usableAt(Instant utc) {
        return usable.stream().anyMatch(interval -> interval.contains(utc));
    }

    /** What the planet's moons and their shadows do in the dark interval, by time. */
    public List<MoonEvent> moonEvents() {
        return MoonEvents.of(sky, dark);
    }

    /**
     * What happens in the dark interval, by time: Sun, planet, Moon, the planet's moons, and the features that are given.
     *
     * @param features whose passages over the central meridian are wanted
     */
    public List<SkyEvent> events(List<Feature> features) {
        return NightEvents.of(this, features);
    }
}
