package org.epochrome.colour;

/**
 * How light a colour looks: the lightness of Oklab (Ottosson 2020, "A perceptual color space for image processing") for linear RGB with the primaries
 * of sRGB.
 */
public final class PerceivedLightness {
    private PerceivedLightness() {}

    /** Lightness, 1 for white. Multiplying the colour by f multiplies it by the cube root of f. */
    public static double of(double red, double green, double blue) {
        double l = Math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue);
        double m = Math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue);
        double s = Math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue);
        return 0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s;
    }
}
