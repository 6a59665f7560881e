package org.epochrome.plan.night;

import java.time.Instant;
import java.util.Optional;

/**
 * One pass of a body across the sky, the one whose culmination is nearest to the middle of the night; UTC. It rises and sets when its
 * centre appears at the horizon, at an airless altitude of -34 arcmin (the Moon: its upper limb). It may rise before the
 * night begins and set after it ends.
 *
 * @param rise empty if it is always above or always below the horizon
 * @param culmination upper transit of the meridian
 * @param culminationAltitudeDeg airless; negative if the body never rises
 * @param set empty if it is always above or always below the horizon
 */
public record RiseAndSet(
        Optional<Instant> rise, Instant culmination, double culminationAltitudeDeg, Optional<Instant> set) {}
