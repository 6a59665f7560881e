package org.epochrome.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.atmosphere.Air;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.ephemeris.Site;
import org.epochrome.io.DatedFrame;

/**
 * Everything that decides what a combination looks like. The same recipe gives the same picture, bit for bit.
 *
 * @param frames frames with their bands and times, in the order given
 * @param body the planet
 * @param site place of the observer, if known
 * @param air the air there, if known better than by the site's height
 * @param epoch instant of the result; empty for midway between the earliest and the latest middle
 * @param northDeg north angle of the reference frame, if known
 * @param mirroring whether frames are mirrored
 * @param scaleArcsecPerPx plate scale, if known; else it follows from the disk's apparent diameter
 * @param mount what keeps its direction in the camera
 * @param system longitude system by which the surface turns; empty for rates by latitude
 * @param turn whether to turn frames to the epoch
 * @param dispersion whether to take the air's dispersion into account
 * @param unsmear whether to take off what dispersion draws out within a band
 * @param spectrum how strongly each wavelength of a band counts
 * @param alignment how frames are laid on each other
 * @param assignment which bands make the picture
 * @param moons whether moons and their shadows are kept from turning with the globe
 */
public record Recipe(
        List<DatedFrame> frames,
        Body body,
        Optional<Site> site,
        Optional<Air> air,
        Optional<Instant> epoch,
        OptionalDouble northDeg,
        Mirroring mirroring,
        OptionalDouble scaleArcsecPerPx,
        Mount mount,
        Optional<RotationSystem> system,
        boolean turn,
        boolean dispersion,
        boolean unsmear,
        Spectrum spectrum,
        Alignment alignment,
        Assignment assignment,
        boolean moons) {
    public Recipe {
        frames = List.copyOf(frames);
    }

    /** A recipe for the usual bands. */
    public Recipe(
            List<DatedFrame> frames,
            Body body,
            Optional<Site> site,
            Optional<Air> air,
            Optional<Instant> epoch,
            OptionalDouble northDeg,
            Mirroring mirroring,
            OptionalDouble scaleArcsecPerPx,
            Mount mount,
            Optional<RotationSystem> system,
            boolean turn,
            boolean dispersion,
            boolean unsmear) {
        this(
                frames,
                body,
                site,
                air,
                epoch,
                northDeg,
                mirroring,
                scaleArcsecPerPx,
                mount,
                system,
                turn,
                dispersion,
                unsmear,
                Spectrum.EVEN,
                Alignment.USUAL,
                Assignment.usual(frames),
                true);
    }

    /** The same in other bands. */
    public Recipe assigned(Assignment other) {
        return new Recipe(
                frames,
                body,
                site,
                air,
                epoch,
                northDeg,
                mirroring,
                scaleArcsecPerPx,
                mount,
                system,
                turn,
                dispersion,
                unsmear,
                spectrum,
                alignment,
                other,
                moons);
    }

    /** The same with a known posture of the reference frame. */
    Recipe posed(double knownNorthDeg, Mirroring knownMirroring) {
        return new Recipe(
                frames,
                body,
                site,
                air,
                epoch,
                OptionalDouble.of(knownNorthDeg),
                knownMirroring,
                scaleArcsecPerPx,
                mount,
                system,
                turn,
                dispersion,
                unsmear,
                spectrum,
                alignment,
                assignment,
                moons);
    }
}
