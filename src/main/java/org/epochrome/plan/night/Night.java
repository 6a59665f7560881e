package org.epochrome.plan.night;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.text.Message;

/**
 * A night at a site: from noon to noon by the Sun.
 *
 * @param body the planet
 * @param site where
 * @param date local date on which the night begins
 * @param offset of local time
 * @param horizon what obstructs the view
 * @param midnight when the Sun passes the lower meridian
 * @param dark from sunset to sunrise; from noon to noon where the Sun does not rise, and of no length at midnight where it does not set
 * @param sun sunset, twilights, sunrise
 * @param planet rise, culmination and set of the planet
 * @param moon the same of the Moon
 * @param hours each full quarter of an hour from sunset to sunrise, from noon to noon where there is neither
 * @param usable when the planet stands above the horizon in the dark interval
 * @param caution by the planet's elongation at midnight
 * @param warnings what the user should know: dates beyond the ephemeris, nearness to the Sun, no night, never above the horizon
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
        List<Message> warnings) {
    public Night {
        hours = List.copyOf(hours);
        usable = List.copyOf(usable);
        warnings = List.copyOf(warnings);
    }

    /** Computes a night. */
    public static Night of(Body body, Site site, LocalDate date, ZoneOffset offset, Horizon horizon) {
        throw new UnsupportedOperationException();
    }

    /** The offset of mean solar time in full hours, for sites whose time zone is not given. */
    public static ZoneOffset solarOffset(Site site) {
        throw new UnsupportedOperationException();
    }

    /** The planet and the sky at any instant from noon to noon; full precision. */
    public QuarterHour at(Instant utc) {
        throw new UnsupportedOperationException();
    }

    /**
     * What happens in the night, by time: Sun, planet, Moon, the planet's moons, and the features that are given.
     *
     * @param features whose passages over the central meridian are wanted
     */
    public List<SkyEvent> events(List<Feature> features) {
        throw new UnsupportedOperationException();
    }
}
