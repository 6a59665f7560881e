package org.epochrome.align;

import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Binning;
import org.epochrome.image.Gaussian;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;
import org.epochrome.turn.Turned;

/**
 * The markings of a turned frame without its shading: the relative departure from a running mean, over the part of the
 * disk that is well lit and well seen, zero elsewhere.
 *
 * @param markings the detail, dimensionless
 * @param weight 1 inside that part, falling to 0 at its edge
 * @param grainPx blur of the detail, standard deviation, pixels
 */
public record Detail(Plane markings, Plane weight, double grainPx) {
    private static final double RIM = 0.92;
    private static final double LEAST_LIGHT = 0.2;
    /** Detail is softened a little, against noise. */
    private static final double SOFTENED = 1.044;

    /**
     * Takes the markings out of a turned frame.
     *
     * @param view view of the globe at the epoch, on the turned frame's pixels
     * @param shading the frame's shading
     * @param leastGrainPx blur that finer detail is softened to, where it is not to be trusted
     */
    public static Detail of(Turned turned, View view, Shading shading, double leastGrainPx) {
        Plane picture = turned.picture();
        int width = picture.width();
        int height = picture.height();
        Plane shade = turned.shade();
        float brightest = 0;
        for (float s : shade.data()) {
            brightest = Math.max(brightest, s);
        }
        float least = (float) LEAST_LIGHT * brightest;
        Plane inside = new Plane(width, height);
        Plane ratio = new Plane(width, height);
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < width; x++) {
                    float value = picture.at(x, y);
                    float s = shade.at(x, y);
                    if (s > least
                            && !Float.isNaN(value)
                            && turned.trust().at(x, y) > 0.98f
                            && view.ellipticRadius(view.pole(x, y), view.side(x, y)) < RIM) {
                        inside.set(x, y, 1);
                        ratio.set(x, y, value / s);
                    }
                }
            }
        });
        double own = Math.max(1, shading.blurPx());
        double grain = Math.max(own, leastGrainPx);
        double coarse = 2.5 * grain;
        Plane running = over(Gaussian.blur(ratio, coarse), Gaussian.blur(inside, coarse));
        float[] r = ratio.data();
        for (int i = 0; i < r.length; i++) {
            r[i] = inside.data()[i] == 0 ? 0 : r[i] / running.data()[i] - 1;
        }
        double softened = SOFTENED * grain;
        Plane markings = Gaussian.blur(ratio, Math.sqrt(softened * softened - own * own));
        Plane weight = Gaussian.blur(inside, 2 * grain);
        for (int i = 0; i < r.length; i++) {
            // Only where the whole neighbourhood lies inside is the smoothed detail unbiased.
            float w = 2 * weight.data()[i] - 1;
            weight.data()[i] = w <= 0 ? 0 : w;
        }
        return new Detail(markings, weight, softened);
    }

    /** The same on pixels binned by a factor. */
    Detail binned(int factor) {
        return factor == 1
                ? this
                : new Detail(Binning.by(factor, markings), Binning.by(factor, weight), grainPx / factor);
    }

    private static Plane over(Plane numerator, Plane denominator) {
        float[] n = numerator.data();
        for (int i = 0; i < n.length; i++) {
            float d = denominator.data()[i];
            n[i] = d > 1e-4f ? n[i] / d : 0;
        }
        return numerator;
    }
}
