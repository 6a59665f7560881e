package org.epochrome.disk.model;

import org.epochrome.disk.Shading;
import org.epochrome.image.blur.Wings;

/**
 * How a spread function shows a long, sharp edge between a bright and a dark side. No optics and no air make the dark side
 * darker than it is without the edge, since a spread function of light is nowhere negative (Goodman 2017, Introduction to Fourier
 * Optics, section 6.3); sharpening does, by its negative lobes.
 */
public final class EdgeSpread {
    /** How far from the edge the dark side is looked at, and the steps, in standard deviations of the core. */
    private static final double REACH = 20;

    private static final double STEP = 0.25;
    /** Frequency beyond which the core lets nothing through, cycles per standard deviation of the core. */
    private static final double CUTOFF = 0.8;

    private static final int FREQUENCIES = 200;

    private EdgeSpread() {}

    /**
     * By how much the dark side is darker than without the edge where it is darkest, as a part of the edge's height; 0 if nowhere.
     *
     * @param shading whose blur and wings are looked at; dispersion is left out
     */
    public static double undershoot(Shading shading) {
        if (shading.wings().equals(Wings.NONE)) {
            return 0;
        }
        double least = 0;
        for (double away = 0; away <= REACH; away += STEP) {
            least = Math.min(least, dark(shading, away * shading.blurPx()));
        }
        return -least;
    }

    /** The light at a distance from the edge on the dark side, 1 being that of the bright one. */
    static double dark(Shading shading, double awayPx) {
        double step = CUTOFF / shading.blurPx() / FREQUENCIES;
        double sum = awayPx * step; // half of the first interval, where sin(2 pi f x) / (pi f) is 2 x
        for (int k = 1; k <= FREQUENCIES; k++) {
            double frequency = k * step;
            double core =
                    Math.exp(-2 * Math.PI * Math.PI * shading.blurPx() * shading.blurPx() * frequency * frequency);
            sum += step
                    * core
                    * shading.wings().transfer(frequency)
                    * Math.sin(2 * Math.PI * frequency * awayPx)
                    / (Math.PI * frequency);
        }
        return 0.5 - sum;
    }
}
