package org.epochrome.disk;

import java.util.Arrays;
import org.epochrome.image.Plane;

/**
 * How often the darkest levels occur around a disk whose sky was cut off. Where linear light crosses the cut it changes steadily, so all
 * levels just above the cut cover equal areas, and brighter ones, where a limb or noise is steeper, less. A curve that spreads the
 * dark levels leaves the darkest out: if light is the sample raised to a power g, an area with less light than some level grows with
 * that level's power g.
 *
 * @param cutPart part of the sky that has the frame's least value
 * @param exponent how the area with less light than some level grows with the level, by the darkest levels: 1 or less in linear
 *     light; NaN if they are too few, or if nothing lies close to the cut, so that something else than a cut made the least value
 * @param sigma standard error of the exponent if it is 1
 */
public record DarkLevels(double cutPart, double exponent, double sigma) {
    /** Part of the radius from which pixels count as sky: nearer ones hold the terminator, where a law may be steeper. */
    private static final double OFF_DISK = 0.97;

    /** Levels, as parts of the disk's brightness, up to which pixels are looked at: the darkest that have enough of them. */
    private static final double[] CEILINGS = {0.01, 0.014, 0.02, 0.03, 0.045, 0.06, 0.09, 0.13, 0.18};
    /** So many tell an exponent of 2.2 from 1 by eight standard errors of the mean level, */
    private static final int ENOUGH = 150;
    /** and so many by five, if there are no more below the highest ceiling. */
    private static final int LEAST = 60;
    /** Steps of the levels below a ceiling, so that each third of it has one. */
    private static final int LEAST_STEPS = 3;
    /** Part of them in the lowest third: an exponent of 2.4 leaves 0.07, a threshold without subtraction or a mask none. */
    private static final double NEAR_CUT = 0.03;

    /**
     * Of a frame.
     *
     * @param frame as it was fitted
     * @param globe aspect of the body
     */
    public static DarkLevels of(Plane frame, Globe globe, FittedDisk fit) {
        View view = new View(globe, fit.disk());
        double beyond = NoiseRatio.skyBeyond(globe);
        float least = least(frame);
        double[] levels = new double[frame.data().length];
        int count = 0;
        int skies = 0;
        int cut = 0;
        for (int y = 0; y < frame.height(); y++) {
            for (int x = 0; x < frame.width(); x++) {
                float value = frame.at(x, y);
                double part = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                if (Float.isNaN(value) || part < OFF_DISK) {
                    continue;
                }
                if (part > beyond) {
                    skies++;
                    cut += value == least ? 1 : 0;
                }
                if (value > least) {
                    levels[count++] = (value - least) / fit.brightness();
                }
            }
        }
        return of(skies == 0 ? 0 : cut / (double) skies, Arrays.copyOf(levels, count));
    }

    /** The least value of a frame. */
    static float least(Plane frame) {
        float least = Float.POSITIVE_INFINITY;
        for (float value : frame.data()) {
            least = value < least ? value : least;
        }
        return least;
    }

    /** By the mean of the levels up to the lowest ceiling that has enough. */
    private static DarkLevels of(double cutPart, double[] levels) {
        // What is below half a step was rounded to the cut itself.
        double step = Arrays.stream(levels).min().orElse(1);
        double floor = 0.5 * step;
        double top = floor;
        long count = 0;
        for (double ceiling : CEILINGS) {
            if (count < ENOUGH && ceiling >= LEAST_STEPS * step) {
                top = Math.floor(ceiling / step) * step + floor;
                count = below(levels, top);
            }
        }
        if (count < LEAST || below(levels, floor + (top - floor) / 3) < NEAR_CUT * count) {
            return new DarkLevels(cutPart, Double.NaN, Double.NaN);
        }
        double mean = (meanBelow(levels, top) - floor) / (top - floor); // p / (p + 1) for an exponent of p
        return new DarkLevels(cutPart, mean / (1 - mean), 4 / Math.sqrt(12.0 * count)); // of even levels
    }

    private static long below(double[] levels, double level) {
        return Arrays.stream(levels).filter(l -> l < level).count();
    }

    private static double meanBelow(double[] levels, double level) {
        return Arrays.stream(levels).filter(l -> l < level).average().orElseThrow();
    }
}
