package org.epochrome.plan;

import java.util.Optional;
import org.epochrome.image.Band;
import org.epochrome.plan.limit.BandDispersion;
import org.epochrome.plan.limit.BandLimit;
import org.epochrome.plan.limit.Sampling;

/**
 * A band when the planet stands highest.
 *
 * @param limit how long it may be recorded
 * @param dispersion what the air does to it; empty below 5 degrees of altitude
 * @param lowestAltitudeDeg below which the smear within it is longer than the resolution; 5 if it never is
 * @param sampling how finely the pixels sample it
 */
public record BandPlan(
        BandLimit limit, Optional<BandDispersion> dispersion, double lowestAltitudeDeg, Sampling sampling) {
    public Band band() {
        return limit.band();
    }
}
