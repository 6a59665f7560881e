package org.epochrome.session.recipe;

import org.epochrome.atmosphere.Spectrum;

/** The light that is assumed within a passband. */
public enum Light {
    /** The planet's, through the air, as a silicon camera responds to it. */
    CAMERA(Spectrum.CAMERA),
    /** Sunlight. */
    SUN(Spectrum.SUNLIGHT),
    /** Equally strong at all wavelengths. */
    EVEN(Spectrum.EVEN);

    private final Spectrum spectrum;

    Light(Spectrum spectrum) {
        this.spectrum = spectrum;
    }

    Spectrum spectrum() {
        return spectrum;
    }
}
