package org.epochrome.session.schedule;

import java.util.Arrays;
import java.util.Optional;
import org.epochrome.atmosphere.Air;
import org.epochrome.atmosphere.AirMass;
import org.epochrome.atmosphere.Dispersion;
import org.epochrome.atmosphere.Extinction;
import org.epochrome.atmosphere.Refraction;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.SmearModel;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Recipe;

/** What the air does to exposures on their own pixels; knows nothing without a site or with dispersion switched off. */
public final class AtmosphericDispersion {
    /** Change of wavelength by which the shift's derivative is taken. */
    private static final double STEP_NM = 1;

    private final Optional<Air> air;
    private final Spectrum spectrum;

    private AtmosphericDispersion(Optional<Air> air, Spectrum spectrum) {
        this.air = air;
        this.spectrum = spectrum;
    }

    public static AtmosphericDispersion over(Recipe recipe) {
        return new AtmosphericDispersion(
                recipe.corrections().dispersion() ? recipe.place().site().map(recipe.place()::airAt) : Optional.empty(),
                recipe.corrections().spectrum());
    }

    /** Whether dispersion can be computed for an aspect: the site is known and the body is high enough. */
    public boolean knows(Aspect aspect) {
        return dispersion(aspect).isPresent();
    }

    private Optional<Dispersion> dispersion(Aspect aspect) {
        return air.flatMap(a -> aspect.horizontal()
                .filter(h -> h.altitudeDeg() >= Refraction.LOWEST_ALTITUDE_DEG)
                .map(h -> new Dispersion(
                        light(aspect.body(), h.altitudeDeg(), a).effectiveNm(Band.G.passband()), h.altitudeDeg(), a)));
    }

    /** The light that a camera takes in of a body at an altitude. */
    private Spectrum light(Body body, double altitudeDeg, Air through) {
        double airMass = AirMass.at(altitudeDeg);
        return spectrum.from(nm -> body.albedo().at(nm), nm -> Extinction.transmission(nm, airMass, through));
    }

    private Spectrum light(Aspect aspect, Dispersion d) {
        return light(aspect.body(), d.trueAltitudeDeg(), d.air());
    }

    /** How dispersion smears a band within a frame. */
    public SmearModel smear(Band band, Aspect aspect, Disk disk) {
        return dispersion(aspect)
                .<SmearModel>map(d -> {
                    double scale = arcsecPerPx(aspect, disk);
                    double zenith = zenithDeg(aspect, disk);
                    Spectrum light = light(aspect, d);
                    Passband assumed = band.passband();
                    return (widening, tilt) -> Smear.along(
                            zenith,
                            Arrays.stream(d.shiftsArcsec(assumed.widened(widening), light.tilted(assumed, tilt)))
                                    .map(arcsec -> arcsec / scale)
                                    .toArray());
                })
                .orElse(SmearModel.exactly(Smear.NONE));
    }

    /** By how much a band lies further right and down, in pixels, if its waves are longer by a nanometre; empty if unknown. */
    public Optional<PixelOffset> shiftPerNm(Band band, Aspect aspect, Disk disk) {
        return shift(band, aspect, disk).map(here -> {
            PixelOffset there = shift(band.through(band.passband().movedBy(STEP_NM)), aspect, disk)
                    .orElseThrow();
            return new PixelOffset((there.x() - here.x()) / STEP_NM, (there.y() - here.y()) / STEP_NM);
        });
    }

    /** How far a band lies from where light of the middle of G would lie: pixels right and down; empty if unknown. */
    public Optional<PixelOffset> shift(Band band, Aspect aspect, Disk disk) {
        return dispersion(aspect).map(d -> {
            double length = d.shiftArcsec(band.passband(), light(aspect, d)) / arcsecPerPx(aspect, disk);
            double zenith = Math.toRadians(zenithDeg(aspect, disk));
            return new PixelOffset(-length * Math.sin(zenith), -length * Math.cos(zenith));
        });
    }

    /** Plate scale by the disk's apparent diameter. */
    public static double arcsecPerPx(Aspect aspect, Disk disk) {
        return 0.5 * aspect.equatorialDiameterArcsec() / disk.equatorialRadiusPx();
    }

    /** Direction of the zenith from image up, counter-clockwise as displayed. */
    static double zenithDeg(Aspect aspect, Disk disk) {
        double fromPole = aspect.horizontal().orElseThrow().parallacticAngleDeg() - aspect.poleAngleDeg();
        return Disk.wrapDeg(disk.northAngleDeg() + (disk.mirrored() ? -fromPole : fromPole));
    }
}
