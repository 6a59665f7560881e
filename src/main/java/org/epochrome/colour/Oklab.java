package org.epochrome.colour;

/**
 * Lightness and colour as the eye sees them: OKLab (Ottosson 2020, A perceptual color space for image processing). If
 * light grows by a factor, all three coordinates grow by its cube root, so a curve on lightness that takes the other two
 * with it changes no hue.
 */
final class Oklab {
    /** What two thirds of a double's exponent's bias are in its bits, less what makes the first guess's errors even. */
    private static final long THIRD_OF_THE_BIAS = 0x2A9F7893782DA1CEL;

    /** The most lightness of colours without negative parts of which none exceeds 1. */
    static final double MOST_LIGHTNESS = 0.2104542553 + 0.7936177850;

    private static final int HALLEY_STEPS = 2;

    private Oklab() {}

    /** Linear sRGB to lightness and two opponent colours, in place. */
    static void fromLinear(double[] colour) {
        double r = colour[0];
        double g = colour[1];
        double b = colour[2];
        double l = cubeRoot(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
        double m = cubeRoot(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
        double s = cubeRoot(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
        colour[0] = 0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s;
        colour[1] = 1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s;
        colour[2] = 0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s;
    }

    /** Back to linear sRGB; out of its gamut some parts lie below 0 or above 1. */
    static void toLinear(double lightness, double a, double b, double[] colour) {
        double l = cube(lightness + 0.3963377774 * a + 0.2158037573 * b);
        double m = cube(lightness - 0.1055613458 * a - 0.0638541728 * b);
        double s = cube(lightness - 0.0894841775 * a - 1.2914855480 * b);
        colour[0] = 4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s;
        colour[1] = -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s;
        colour[2] = -0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s;
    }

    /**
     * To a part in 10^14: a third of the exponent for a guess, and two of Halley's steps. The library's is right to the last
     * digit and took a third of the time of a quick picture.
     */
    static double cubeRoot(double v) {
        double size = Math.abs(v);
        if (size == 0) {
            return v;
        }
        if (!(size >= Double.MIN_NORMAL && size <= Double.MAX_VALUE)) {
            return Math.cbrt(v);
        }
        double root = Double.longBitsToDouble(Double.doubleToRawLongBits(size) / 3 + THIRD_OF_THE_BIAS);
        for (int k = 0; k < HALLEY_STEPS; k++) {
            double cube = root * root * root;
            root *= (cube + 2 * size) / (2 * cube + size);
        }
        return Math.copySign(root, v);
    }

    private static double cube(double v) {
        return v * v * v;
    }
}
