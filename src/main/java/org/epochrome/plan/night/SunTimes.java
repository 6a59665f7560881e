package org.epochrome.plan.night;

import java.time.Instant;
import java.util.Optional;

/**
 * When the Sun sets and rises and how dark it gets, UTC; empty where it does not happen that night. Sunset and sunrise: the upper limb
 * at the horizon, the centre's airless altitude -50 arcmin; twilights end when the centre stands 6, 12 and 18 degrees below
 * it.
 */
public record SunTimes(
        Optional<Instant> sunset,
        Optional<Instant> civilDusk,
        Optional<Instant> nauticalDusk,
        Optional<Instant> astronomicalDusk,
        Optional<Instant> astronomicalDawn,
        Optional<Instant> nauticalDawn,
        Optional<Instant> civilDawn,
        Optional<Instant> sunrise) {}
