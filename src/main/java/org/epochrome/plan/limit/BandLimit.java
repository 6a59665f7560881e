package org.epochrome.plan.limit;

import org.epochrome.image.Band;

/**
 * How long a band may be recorded.
 *
 * @param band which one
 * @param diffractionArcsec width of the diffraction pattern at its middle wavelength
 * @param resolutionArcsec width of diffraction and turbulence together
 * @param arcsecPerMin speed of the fastest part of the surface
 * @param smearPart part of the resolution by which rotation may smear the detail
 */
public record BandLimit(
        Band band, double diffractionArcsec, double resolutionArcsec, double arcsecPerMin, double smearPart) {
    /** The longest recording, seconds: the smear at its end is the chosen part of the resolution. */
    public double longestS() {
        return 60 * rotationSmearArcsec() / arcsecPerMin;
    }

    /** The recording after which the smear is as long as the resolution, seconds. */
    public double fullSmearS() {
        return longestS() / smearPart;
    }

    /** Length of the smear by the longest recording, arcsec. */
    public double rotationSmearArcsec() {
        return smearPart * resolutionArcsec;
    }

    /** Contrast that the longest recording takes from fine detail, 0 to 1. */
    public double contrastLoss() {
        return Resolution.contrastLoss(smearPart);
    }
}
