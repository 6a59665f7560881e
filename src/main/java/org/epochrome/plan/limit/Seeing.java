package org.epochrome.plan.limit;

import org.epochrome.text.Message;

/**
 * How much turbulence blurs the stacks, by the law of Kolmogorov's turbulence (Fried 1966, J. Opt. Soc. Am. 56, 1372; Roddier 1981,
 * Progress in Optics 19, 281): the width grows with the air mass to the power of 3/5 and falls with the wavelength to 1/5.
 *
 * @param zenithArcsec full width at half maximum of the blur at 500 nm and the zenith, 0 (no turbulence) to 20
 */
public record Seeing(double zenithArcsec) {
    /** No turbulence at all: diffraction alone. */
    public static final Seeing NONE = new Seeing(0);

    private static final double STANDARD_NM = 500;

    public Seeing {
        if (!(zenithArcsec >= 0 && zenithArcsec <= 20)) {
            throw new IllegalArgumentException(Message.text("value.seeing", zenithArcsec));
        }
    }

    /** Full width at half maximum at a wavelength and an air mass, arcsec. */
    public double arcsec(double wavelengthNm, double airMass) {
        return zenithArcsec * Math.pow(airMass, 0.6) * Math.pow(wavelengthNm / STANDARD_NM, -0.2);
    }
}
