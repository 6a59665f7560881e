package org.epochrome.colour;

/** The colour space of screens: IEC 61966-2-1. */
public final class Srgb {
    private static final double LINEAR_UP_TO = 0.0031308;
    private static final int STEPS = 4096;
    /** The curve's two parts meet below, where it bends too much for a straight line. */
    private static final double TABLE_FROM = 0.0032;

    /** What is shown of the squares of evenly spaced numbers from 0 to 1. */
    private static final float[] SHOWN = new float[STEPS + 2];

    static {
        for (int i = 0; i < SHOWN.length; i++) {
            SHOWN[i] = (float) encode((double) i * i / ((double) STEPS * STEPS));
        }
    }

    private Srgb() {}

    /** As {@link #encode}, to 1e-7 and several times as fast: linear between the values of a table. */
    public static float encodeFast(double linear) {
        if (!(linear > TABLE_FROM && linear < 1)) {
            return (float) encode(linear);
        }
        double place = Math.sqrt(linear) * STEPS;
        int below = (int) place;
        return SHOWN[below] + (float) (place - below) * (SHOWN[below + 1] - SHOWN[below]);
    }

    /** Linear light to what a screen is sent; negative and NaN become 0, what lies above 1 goes on. */
    public static double encode(double linear) {
        if (!(linear > 0)) {
            return 0;
        }
        return linear <= LINEAR_UP_TO ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
    }

    public static double decode(double shown) {
        return shown <= 0.04045 ? shown / 12.92 : Math.pow((shown + 0.055) / 1.055, 2.4);
    }

    /** Linear red, green and blue of tristimulus values whose white is D65 with Y = 1. */
    static double[] fromXyz(double[] xyz) {
        return new double[] {
            3.2404542 * xyz[0] - 1.5371385 * xyz[1] - 0.4985314 * xyz[2],
            -0.9692660 * xyz[0] + 1.8760108 * xyz[1] + 0.0415560 * xyz[2],
            0.0556434 * xyz[0] - 0.2040259 * xyz[1] + 1.0572252 * xyz[2],
        };
    }
}
