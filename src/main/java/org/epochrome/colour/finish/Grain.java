package org.epochrome.colour.finish;

import java.util.Arrays;
import org.apache.commons.math3.util.KthSelector;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Starlet;
import org.epochrome.job.Rows;

/** The noise in markings, scale by scale, and what stands out of it. */
final class Grain {
    private Grain() {}

    /**
     * Noise per scale by the median of absolute values, which detail hardly moves in fine scales; in coarse scales, where
     * it does, not more than white noise as strong as in the finest would leave there, and half as much again.
     */
    static double ofScale(int scale, Plane detail, Plane support, double finest) {
        double noise = inDetail(detail, support);
        return Math.min(noise, 1.5 * finest * Starlet.whiteNoise(scale) / Starlet.whiteNoise(0));
    }

    /** The noise of detail, where it is all of a kind: a robust standard deviation. */
    static double inDetail(Plane detail, Plane support) {
        double[] size = new double[support.data().length];
        int n = 0;
        for (int i = 0; i < size.length; i++) {
            if (support.data()[i] == 1) {
                size[n++] = Math.abs(detail.data()[i]);
            }
        }
        return n == 0 ? 0 : new KthSelector().select(Arrays.copyOf(size, n), null, n / 2) / 0.6745;
    }

    /**
     * How far detail can be distinguished from noise, 0 to 1, by its strength nearby; towards the dark limb noise is stronger.
     *
     * @param threshold standard deviations of noise that count half
     */
    static Plane trust(Plane detail, double noise, Plane light, double threshold) {
        int width = detail.width();
        int height = detail.height();
        Plane power = new Plane(width, height);
        for (int i = 0; i < power.data().length; i++) {
            power.data()[i] = detail.data()[i] * detail.data()[i];
        }
        Plane near = Gaussian.blur(power, 1);
        float brightest = 0;
        for (float v : light.data()) {
            brightest = Math.max(brightest, v);
        }
        float most = brightest;
        Rows.each(height, (from, to) -> {
            for (int i = from * width; i < to * width; i++) {
                double darker = most / Math.max(1e-3 * most, light.data()[i]);
                double least = threshold * noise * darker;
                near.data()[i] = (float) (near.data()[i] / (near.data()[i] + least * least + 1e-20));
            }
        });
        return near;
    }
}
