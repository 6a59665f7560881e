package org.epochrome.session.recipe;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
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
 * @param light the light assumed within each band; CAMERA with a response
 * @param response the camera's response by wavelength, instead of that of a typical one
 */
public record Corrections(
        @Choice(key = "rotationSystem") Optional<RotationSystem> system,
        @Choice(option = "rotation-period") OptionalDouble rotationPeriodDays,
        @Choice boolean turn,
        @Choice boolean dispersion,
        @Choice boolean airFlattening,
        @Choice Extent unsmear,
        @Choice boolean moons,
        @Choice Light light,
        @Choice Optional<List<Spectrum.Point>> response)
        implements Choices<Corrections> {
    public Corrections {
        if (rotationPeriodDays.isPresent() && !(rotationPeriodDays.getAsDouble() > 0)) {
            throw new IllegalArgumentException(Message.text("value.rotationPeriod", rotationPeriodDays.getAsDouble()));
        }
        light = response.isPresent() ? Light.CAMERA : light;
        response = response.map(curve -> Spectrum.seenBy(curve).curve());
    }

    /** How strongly each wavelength of a band counts. */
    public Spectrum spectrum() {
        return response.map(Spectrum::seenBy).orElseGet(light::spectrum);
    }

    /** These corrections with another rotation system; empty: as the body's clouds move. A period of the user's is dropped. */
    public Corrections by(Optional<RotationSystem> other) {
        return with(Corrections::system, other).with(Corrections::rotationPeriodDays, OptionalDouble.empty());
    }

    /** The longitude system that a body's surface turns with by default; empty where it follows winds. */
    public static Optional<RotationSystem> usualSystem(Body body) {
        return body.surfaceSystem();
    }

    /** Turned by the body's usual rotation, with dispersion in the light that a camera takes in. */
    public static Corrections usual(Body body) {
        return new Corrections(
                usualSystem(body),
                OptionalDouble.empty(),
                true,
                true,
                true,
                Extent.HALF,
                true,
                Light.CAMERA,
                Optional.empty());
    }
}
