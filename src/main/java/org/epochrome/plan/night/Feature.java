package org.epochrome.plan.night;

import java.time.Instant;
import java.util.Optional;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;

/**
 * A marking whose passages over the central meridian are asked for.
 *
 * @param name for people
 * @param system of its longitude
 * @param longitudeDeg at the epoch of the drift, 0 to 360
 * @param drift how the longitude changes, if it does
 */
public record Feature(String name, RotationSystem system, double longitudeDeg, Optional<Drift> drift) {

    /**
     * A steady change of longitude.
     *
     * @param degPerDay growing longitudes positive
     * @param from when the feature had its longitude
     */
    public record Drift(double degPerDay, Instant from) {}

    /**
     * A feature as people write it: {@code NAME=SYSTEM:LON}, such as {@code spot=II:45.5}, with a drift
     * {@code spot=II:45.5+0.04@2026-11-01}: degrees a day, and the date of the longitude.
     *
     * @throws IllegalArgumentException one sentence for the user
     */
    public static Feature parse(String text, Body body) {
        throw new UnsupportedOperationException();
    }

    /** Its longitude at an instant, 0 to 360. */
    public double longitudeDeg(Instant utc) {
        throw new UnsupportedOperationException();
    }
}
