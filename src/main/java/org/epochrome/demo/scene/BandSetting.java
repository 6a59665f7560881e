package org.epochrome.demo.scene;

/**
 * What one band does to the picture.
 *
 * @param minnaertK exponent k of the reflectance {@code A mu0^k mu^(k-1)} (Minnaert 1941), 0.5 to 1: 1 is Lambert's law,
 *     0.5 a flat full moon
 * @param blurFwhmPx full width at half maximum of the Gaussian blur, pixels, 0 for none
 * @param gain recorded level of the brightness 1, which a white surface lit and seen from above has
 */
public record BandSetting(double minnaertK, double blurFwhmPx, double gain) {
    public BandSetting {
        if (!(minnaertK >= 0.4 && minnaertK <= 1.2) || !(blurFwhmPx >= 0) || !(gain > 0)) {
            throw new IllegalArgumentException("No such band: Minnaert exponent " + minnaertK + ", blur " + blurFwhmPx
                    + " px, gain " + gain + ".");
        }
    }
}
