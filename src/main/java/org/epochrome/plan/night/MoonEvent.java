package org.epochrome.plan.night;

import java.time.Instant;
import java.util.List;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.GalileanMoon;

/**
 * A moon of the planet, or its shadow, begins or ceases to stand on or behind the disk or in the planet's shadow. The time is
 * that at which the limb (for eclipses, the edge of the shadow of the Sun's centre) passes the middle of the moon or of its
 * shadow.
 *
 * @param utc when it is seen
 * @param moon which moon
 * @param kind what happens
 * @param begins whether it begins, else it ends
 * @param visible false if the moon is hidden behind the planet or dark in its shadow anyway
 */
public record MoonEvent(Instant utc, GalileanMoon moon, Kind kind, boolean begins, boolean visible) {
    /** What happens to a moon. */
    public enum Kind {
        TRANSIT,
        SHADOW_TRANSIT,
        OCCULTATION,
        ECLIPSE
    }

    /**
     * All events of a planet's moons within an interval, by time; empty for planets whose moons no theory here predicts.
     */
    public static List<MoonEvent> of(Body body, Interval interval) {
        throw new UnsupportedOperationException();
    }
}
