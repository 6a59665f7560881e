package org.epochrome.atmosphere;

import java.util.Arrays;
import org.epochrome.image.Passband;

/**
 * How the air spreads colours along the vertical, against a reference wavelength.
 *
 * @param referenceNm the wavelength that stays in place
 * @param trueAltitudeDeg airless altitude of the body, 5 to 90
 * @param air at the site
 */
public record Dispersion(double referenceNm, double trueAltitudeDeg, Air air) {
    /** Enough for a passband of 300 nm to 0.01 arcsec at 10 degrees of altitude. */
    private static final int SAMPLES = 11;

    /** By how much light of a wavelength is moved towards the zenith, arcsec (negative: towards the horizon). */
    public double shiftArcsec(double wavelengthNm) {
        return Refraction.arcsec(wavelengthNm, trueAltitudeDeg, air)
                - Refraction.arcsec(referenceNm, trueAltitudeDeg, air);
    }

    /** By how much equal parts of the light through a filter are moved towards the zenith, arcsec. */
    public double[] shiftsArcsec(Passband passband, Spectrum spectrum) {
        return Arrays.stream(spectrum.samplesNm(passband, SAMPLES))
                .map(this::shiftArcsec)
                .toArray();
    }

    /** By how much an image through a filter is moved towards the zenith, arcsec: the mean over its light. */
    public double shiftArcsec(Passband passband, Spectrum spectrum) {
        return Arrays.stream(shiftsArcsec(passband, spectrum)).average().orElseThrow();
    }

    /** Length over which an image through a filter is smeared along the vertical, edge to edge, arcsec. */
    public double smearArcsec(Passband passband) {
        return shiftArcsec(passband.fromNm()) - shiftArcsec(passband.toNm());
    }
}
