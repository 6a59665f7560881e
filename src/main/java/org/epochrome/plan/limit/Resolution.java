package org.epochrome.plan.limit;

/**
 * The finest detail of a stack: the full width at half maximum of diffraction and turbulence together, whose squares add as those
 * of Gaussian blurs do.
 */
public final class Resolution {
    /** Contrast of detail whose period is a width at half maximum or twice it, after a Gaussian blur: exp(-(pi w / p)^2 / (4 ln 2)). */
    private static final double FINE_PERIODS = 2;

    private final Telescope telescope;
    private final Seeing seeing;
    private final double diffractionFwhm;

    public Resolution(Telescope telescope, Seeing seeing) {
        this.telescope = telescope;
        this.seeing = seeing;
        diffractionFwhm = new Diffraction(telescope.obstruction()).fwhm();
    }

    public Telescope telescope() {
        return telescope;
    }

    /** Width of the diffraction pattern alone, arcsec. */
    public double diffractionArcsec(double wavelengthNm) {
        return diffractionFwhm * telescope.diffractionUnitArcsec(wavelengthNm);
    }

    /** Width of diffraction and turbulence together, arcsec. */
    public double arcsec(double wavelengthNm, double airMass) {
        return Math.hypot(diffractionArcsec(wavelengthNm), seeing.arcsec(wavelengthNm, airMass));
    }

    /**
     * Contrast that an even smear takes from detail whose period is twice the resolution, the finest that a blur of that width
     * leaves with a contrast (0.41) to work with: 1 - sinc(length / period). 0.10 for half the resolution, 0.36 for all of it.
     *
     * @param smear length of the smear, in widths of the resolution, 0 to 2
     */
    public static double contrastLoss(double smear) {
        double x = Math.PI * smear / FINE_PERIODS;
        return x < 1e-9 ? 0 : 1 - Math.sin(x) / x;
    }
}
