package org.epochrome.session;

import java.util.Optional;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;

/**
 * What is corrected in the frames, and by which laws.
 *
 * @param system longitude system by which the surface turns; empty for rates by latitude
 * @param turn whether to turn frames to the epoch
 * @param dispersion whether to take the air's dispersion into account
 * @param unsmear whether to take off what dispersion draws out within a band
 * @param spectrum how strongly each wavelength of a band counts
 */
public record Corrections(
        Optional<RotationSystem> system, boolean turn, boolean dispersion, boolean unsmear, Spectrum spectrum) {
    /** Turned by the body's usual system, with dispersion in even light. */
    public static Corrections usual(Body body) {
        return new Corrections(Optional.of(body.defaultSystem()), true, true, false, Spectrum.EVEN);
    }
}
