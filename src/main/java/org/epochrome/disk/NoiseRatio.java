package org.epochrome.disk;

import java.util.Arrays;
import org.apache.commons.math3.util.KthSelector;
import org.epochrome.image.Plane;
import org.epochrome.image.Roughness;

/**
 * Noise of bright levels against that of dark ones, by the median {@link Roughness} of neighbouring pixels. In linear light the disk's own
 * photons make it the noisiest; a curve that spreads the dark levels makes their noise as strong or stronger.
 *
 * @param diskToSky scatter on the lit disk over that in the sky; the disk's detail makes it larger; NaN where too little of either is seen
 * @param skySteps scatter in the sky, in steps of the frame's levels: only if it is several does it tell more than their spacing
 * @param footToDisk scatter in the foot of the blurred limb over that on the disk; NaN where too little of either is seen
 * @param footSteps scatter in that foot, in steps
 */
public record NoiseRatio(double diskToSky, double skySteps, double footToDisk, double footSteps) {
    /** Parts of the radius within which the disk and beyond which the sky is looked at, and the same beyond rings. */
    private static final double DISK = 0.75;

    /** How far off the globe and its rings, equatorial radii, there is nothing but sky. */
    private static final double SKY = 0.3;
    /** Part of the even globe's brightness from which a pixel lies on the lit disk. */
    private static final double LIT = 0.4;
    /** Part of the radius from which, and levels between which, pixels belong to the foot of the limb. */
    private static final double LIMB = 0.9;

    private static final double LEAST_OF_FOOT = 0.08;
    private static final double MOST_OF_FOOT = 0.25;

    private static final int LEAST_PIXELS = 300;
    private static final int LEAST_PIXELS_OF_FOOT = 50;

    /**
     * Of a frame.
     *
     * @param frame as it was fitted
     * @param globe aspect of the body
     */
    public static NoiseRatio of(Plane frame, Globe globe, FittedDisk fit) {
        View view = new View(globe, fit.disk());
        double beyond = skyBeyond(globe);
        float least = DarkLevels.least(frame);
        double step = Double.POSITIVE_INFINITY;
        Scatter disk = new Scatter(frame);
        Scatter sky = new Scatter(frame);
        Scatter foot = new Scatter(frame);
        for (int y = 1; y < frame.height() - 1; y++) {
            for (int x = 1; x < frame.width() - 1; x++) {
                double rough = Math.abs(Roughness.at(frame, x, y));
                if (Double.isNaN(rough) || rough == 0) { // zero in borders and where the sky was cut off
                    continue;
                }
                float value = frame.at(x, y);
                step = value > least ? Math.min(step, value - least) : step;
                double part = view.ellipticRadius(view.pole(x, y), view.side(x, y));
                if (part < DISK && value - fit.background() > LIT * fit.brightness()) {
                    disk.add(rough);
                } else if (part >= beyond) {
                    sky.add(rough);
                } else if (part > LIMB && inFoot((value - least) / fit.brightness()) && !beside(frame, x, y, least)) {
                    foot.add(rough);
                }
            }
        }
        boolean seen = Math.min(disk.count, sky.count) >= LEAST_PIXELS;
        boolean limb = Math.min(disk.count, foot.count) >= LEAST_PIXELS_OF_FOOT;
        double onDisk = seen || limb ? disk.median() : Double.NaN;
        double inSky = seen ? sky.median() : Double.NaN;
        double inFoot = limb ? foot.median() : Double.NaN;
        return new NoiseRatio(onDisk / inSky, inSky / step, inFoot / onDisk, inFoot / step);
    }

    /** Parts of a globe's radius beyond which there is nothing but sky. */
    static double skyBeyond(Globe globe) {
        return globe.extent() + SKY;
    }

    private static boolean inFoot(double level) {
        return level > LEAST_OF_FOOT && level < MOST_OF_FOOT;
    }

    /** Whether a pixel lies beside one of the least value, where a cut bends what is smooth. */
    private static boolean beside(Plane frame, int x, int y, float least) {
        for (int j = -1; j <= 1; j++) {
            for (int i = -1; i <= 1; i++) {
                if (frame.at(x + i, y + j) == least) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Scatters of pixels. */
    private static final class Scatter {
        private final double[] values;
        private int count;

        Scatter(Plane frame) {
            values = new double[frame.data().length];
        }

        void add(double value) {
            values[count++] = value;
        }

        double median() {
            return new KthSelector().select(Arrays.copyOf(values, count), null, count / 2);
        }
    }
}
