package org.epochrome.plan.limit;

import org.epochrome.image.Band;

/**
 * What the air does to a band at an altitude.
 *
 * @param band which one
 * @param shiftArcsec by how much it is moved towards the zenith against green, negative towards the horizon
 * @param smearArcsec length of its smear along the vertical, edge to edge of the passband
 * @param resolutionArcsec width of diffraction and turbulence there
 */
public record BandDispersion(Band band, double shiftArcsec, double smearArcsec, double resolutionArcsec) {
    /** Whether the smear within the band is longer than the resolution. */
    public boolean smearExceedsResolution() {
        return smearArcsec > resolutionArcsec;
    }

    /** Whether the band lies farther from green than the resolution. */
    public boolean shiftExceedsResolution() {
        return Math.abs(shiftArcsec) > resolutionArcsec;
    }
}
