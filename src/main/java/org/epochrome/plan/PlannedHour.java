package org.epochrome.plan;

import java.util.List;
import java.util.OptionalDouble;
import org.epochrome.plan.limit.BandDispersion;
import org.epochrome.plan.night.QuarterHour;

/**
 * A full quarter of an hour of the night.
 *
 * @param sky where planet, Sun and Moon stand
 * @param usable whether the planet can be recorded
 * @param bands what the air does to each band; empty below 5 degrees of altitude, where refraction is not modelled
 * @param spreadArcsec what a dispersion corrector must bring together: from the shortest to the longest wavelength of all bands
 */
public record PlannedHour(QuarterHour sky, boolean usable, List<BandDispersion> bands, OptionalDouble spreadArcsec) {
    public PlannedHour {
        bands = List.copyOf(bands);
    }
}
