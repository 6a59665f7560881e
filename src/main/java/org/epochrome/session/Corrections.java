package org.epochrome.session;

import java.util.Optional;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.disk.Unsmear.Extent;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;

/**
 * What is corrected in the frames, and by which laws.
 *
 * @param system longitude system by which the surface turns; empty for rates by latitude
 * @param turn whether to turn frames to the epoch
 * @param dispersion whether to take the air's dispersion into account
 * @param unsmear how much to take off of what dispersion draws out within a band
 * @param moons whether moons and their shadows are kept from turning with the globe
 * @param spectrum how strongly each wavelength of a band counts
 */
public record Corrections(
        Optional<RotationSystem> system,
        boolean turn,
        boolean dispersion,
        Extent unsmear,
        boolean moons,
        Spectrum spectrum) {
    /** The same turned by another system; empty for rates by latitude. */
    public Corrections by(Optional<RotationSystem> other) {
        return new Corrections(other, turn, dispersion, unsmear, moons, spectrum);
    }

    /** The same with the frames turned to the epoch or not. */
    public Corrections turned(boolean on) {
        return new Corrections(system, on, dispersion, unsmear, moons, spectrum);
    }

    /** The same with the air's dispersion taken into account or not. */
    public Corrections dispersed(boolean on) {
        return new Corrections(system, turn, on, unsmear, moons, spectrum);
    }

    /** The same with so much of smears within bands taken off. */
    public Corrections unsmeared(Extent extent) {
        return new Corrections(system, turn, dispersion, extent, moons, spectrum);
    }

    /** The same with moons kept from turning or not. */
    public Corrections roundMoons(boolean on) {
        return new Corrections(system, turn, dispersion, unsmear, on, spectrum);
    }

    /** Turned by the body's usual system, with dispersion in even light. */
    public static Corrections usual(Body body) {
        return new Corrections(Optional.of(body.defaultSystem()), true, true, Extent.HALF, true, Spectrum.EVEN);
    }
}
