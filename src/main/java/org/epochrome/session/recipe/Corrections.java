package org.epochrome.session.recipe;

import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.text.Message;

/**
 * What is corrected in the frames, and by which laws.
 *
 * @param system longitude system by which the surface turns; empty to follow what shows on it: the winds of Jupiter and Saturn,
 *     the clouds of Venus in ultraviolet
 * @param rotationPeriodDays sidereal period by which the surface turns, in the sense of the body's rotation; overrides the system
 * @param turn whether to turn frames to the epoch
 * @param dispersion whether to take the air's dispersion into account
 * @param airFlattening whether to take the flattening by refraction into account, where the site is known
 * @param unsmear how much of the dispersion smear within each band to remove
 * @param moons whether moons and their shadows are kept from turning with the globe
 * @param spectrum how strongly each wavelength of a band counts
 */
public record Corrections(
        Optional<RotationSystem> system,
        OptionalDouble rotationPeriodDays,
        boolean turn,
        boolean dispersion,
        boolean airFlattening,
        Extent unsmear,
        boolean moons,
        Spectrum spectrum) {
    public Corrections {
        if (rotationPeriodDays.isPresent() && !(rotationPeriodDays.getAsDouble() > 0)) {
            throw new IllegalArgumentException(Message.text("value.rotationPeriod", rotationPeriodDays.getAsDouble()));
        }
    }

    /** Without a rotation period of the user's, and with refraction. */
    public Corrections(
            Optional<RotationSystem> system,
            boolean turn,
            boolean dispersion,
            Extent unsmear,
            boolean moons,
            Spectrum spectrum) {
        this(system, OptionalDouble.empty(), turn, dispersion, true, unsmear, moons, spectrum);
    }

    /** These corrections with another rotation system; empty: as the body's clouds move. */
    public Corrections by(Optional<RotationSystem> other) {
        return new Corrections(
                other, OptionalDouble.empty(), turn, dispersion, airFlattening, unsmear, moons, spectrum);
    }

    /** These corrections with the turning of frames to the epoch switched on or off. */
    public Corrections turned(boolean on) {
        return new Corrections(system, rotationPeriodDays, on, dispersion, airFlattening, unsmear, moons, spectrum);
    }

    /** These corrections with that of atmospheric dispersion switched on or off. */
    public Corrections dispersed(boolean on) {
        return new Corrections(system, rotationPeriodDays, turn, on, airFlattening, unsmear, moons, spectrum);
    }

    /** These corrections with another extent of removing the dispersion blur within bands. */
    public Corrections unsmeared(Extent extent) {
        return new Corrections(system, rotationPeriodDays, turn, dispersion, airFlattening, extent, moons, spectrum);
    }

    /** These corrections with moons treated apart from the globe, or turned with it. */
    public Corrections roundMoons(boolean on) {
        return new Corrections(system, rotationPeriodDays, turn, dispersion, airFlattening, unsmear, on, spectrum);
    }

    /** The longitude system that a body's surface turns with by default; empty where it follows winds. */
    public static Optional<RotationSystem> usualSystem(Body body) {
        return body.surfaceSystem();
    }

    /** Turned by the body's usual rotation, with dispersion in the light that a camera takes in. */
    public static Corrections usual(Body body) {
        return new Corrections(usualSystem(body), true, true, Extent.HALF, true, Spectrum.CAMERA);
    }
}
