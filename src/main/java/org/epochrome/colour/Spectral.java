package org.epochrome.colour;

import org.epochrome.image.Passband;

/**
 * The colour that a screen shows for light of a passband: that of evenly strong light, as pure as the screen can. Light
 * that no eye sees gets the colour of the nearest that it does.
 *
 * <p>Colour matching functions of the 1931 observer by the fits of Wyman, Sloan and Shirley 2013 (JCGT 2, 2, 1), coefficients
 * from memory, good to some per cent, which is enough for a label.
 */
public final class Spectral {
    private static final double VIOLET_NM = 410;
    private static final double CRIMSON_NM = 680;
    private static final double STEP_NM = 5;

    private Spectral() {}

    /** Display-encoded red, green and blue, 0 to 1, the strongest of them 1. */
    public static double[] colour(Passband band) {
        double[] xyz = new double[3];
        for (double nm = band.fromNm(); nm <= band.toNm(); nm += STEP_NM) {
            double seen = Math.max(VIOLET_NM, Math.min(CRIMSON_NM, nm));
            xyz[0] += 1.056 * lobe(seen, 599.8, 37.9, 31.0)
                    + 0.362 * lobe(seen, 442.0, 16.0, 26.7)
                    - 0.065 * lobe(seen, 501.1, 20.4, 26.2);
            xyz[1] += 0.821 * lobe(seen, 568.8, 46.9, 40.5) + 0.286 * lobe(seen, 530.9, 16.3, 31.1);
            xyz[2] += 1.217 * lobe(seen, 437.0, 11.8, 36.0) + 0.681 * lobe(seen, 459.0, 26.0, 13.8);
        }
        double[] rgb = Srgb.fromXyz(xyz);
        double most = Math.max(rgb[0], Math.max(rgb[1], rgb[2]));
        for (int c = 0; c < 3; c++) {
            rgb[c] = Srgb.encode(Math.max(0, rgb[c] / most));
        }
        return rgb;
    }

    private static double lobe(double nm, double middle, double below, double above) {
        double t = (nm - middle) / (nm < middle ? below : above);
        return Math.exp(-0.5 * t * t);
    }
}
