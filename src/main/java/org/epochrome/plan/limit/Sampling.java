package org.epochrome.plan.limit;

import org.epochrome.image.Band;

/**
 * How finely pixels sample a band. A telescope passes no detail finer than wavelength over aperture, so that pixels need to be
 * no smaller than half of that (Nyquist 1928, Shannon 1949; the cut-off by Goodman, Introduction to Fourier Optics): as a
 * focal ratio, 2 x pixel / wavelength.
 *
 * @param band which one
 * @param arcsecPerPx plate scale
 * @param finestArcsecPerPx half of wavelength over aperture: pixels smaller than this record nothing more
 * @param coarsestArcsecPerPx half the resolution: larger pixels lose detail that this seeing lets through
 * @param finestFRatio the focal ratio of the finest scale with these pixels
 * @param coarsestFRatio the focal ratio of the coarsest scale with these pixels
 */
public record Sampling(
        Band band,
        double arcsecPerPx,
        double finestArcsecPerPx,
        double coarsestArcsecPerPx,
        double finestFRatio,
        double coarsestFRatio) {

    /**
     * The sampling of a band.
     *
     * @param airMass for which the resolution holds
     */
    public static Sampling of(Band band, Resolution resolution, double airMass) {
        Telescope telescope = resolution.telescope();
        double nm = band.passband().effectiveNm();
        double finest = telescope.diffractionUnitArcsec(nm) / 2;
        double coarsest = Math.max(finest, resolution.arcsec(nm, airMass) / 2);
        double scale = telescope.arcsecPerPx();
        return new Sampling(
                band,
                scale,
                finest,
                coarsest,
                telescope.fRatio() * scale / finest,
                telescope.fRatio() * scale / coarsest);
    }

    /** Whether pixels are so large that detail is lost. */
    public boolean tooCoarse() {
        return arcsecPerPx > coarsestArcsecPerPx;
    }

    /** Whether pixels are smaller than any detail needs. */
    public boolean finerThanNeeded() {
        return arcsecPerPx < finestArcsecPerPx;
    }
}
