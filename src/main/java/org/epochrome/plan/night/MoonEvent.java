package org.epochrome.plan.night;

import java.time.Instant;
import org.epochrome.ephemeris.GalileanMoon;
import org.epochrome.text.Message;

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

    /** The event for people. */
    public Message message() {
        String name = moon.displayName();
        return switch (kind) {
            case TRANSIT -> Message.of(begins ? "night.event.transitBegins" : "night.event.transitEnds", name);
            case SHADOW_TRANSIT -> Message.of(begins ? "night.event.shadowBegins" : "night.event.shadowEnds", name);
            case OCCULTATION ->
                Message.of(begins ? "night.event.occultationBegins" : "night.event.occultationEnds", name);
            case ECLIPSE -> Message.of(begins ? "night.event.eclipseBegins" : "night.event.eclipseEnds", name);
        };
    }
}
