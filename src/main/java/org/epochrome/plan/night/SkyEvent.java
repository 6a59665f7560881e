package org.epochrome.plan.night;

import java.time.Instant;
import org.epochrome.text.Message;

/**
 * Something that happens at an instant of the night.
 *
 * @param utc when
 * @param kind what sort of event
 * @param what for people: "Io's shadow enters the disk."
 * @param observable whether it can be seen: the planet stands above the site's horizon between sunset and sunrise, and the
 *     moon that it is about is neither hidden nor dark just then
 */
public record SkyEvent(Instant utc, Kind kind, Message what, boolean observable) {
    /** What an event is about. */
    public enum Kind {
        SUN,
        PLANET,
        MOON,
        SATELLITE,
        FEATURE
    }
}
