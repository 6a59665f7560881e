package org.epochrome.align;

import org.epochrome.image.Gaussian;
import org.epochrome.image.Plane;

/**
 * One picture predicted from another with a gain of its own in every neighbourhood: the least-squares gain and what it
 * leaves unexplained, both as running weighted means with a Gaussian window.
 */
final class LocalGain {
    private final float[] aa;
    private final float[] ab;
    private final float[] bb;
    private final float[] mean;

    LocalGain(Plane a, Plane b, Plane weight, double neighbourhoodPx) {
        Plane wab = new Plane(a.width(), a.height());
        Plane waa = new Plane(a.width(), a.height());
        Plane wbb = new Plane(a.width(), a.height());
        for (int i = 0; i < wab.data().length; i++) {
            float w = weight.data()[i];
            float va = a.data()[i];
            float vb = b.data()[i];
            wab.data()[i] = w * va * vb;
            waa.data()[i] = w * va * va;
            wbb.data()[i] = w * vb * vb;
        }
        aa = Gaussian.blur(waa, neighbourhoodPx).data();
        ab = Gaussian.blur(wab, neighbourhoodPx).data();
        bb = Gaussian.blur(wbb, neighbourhoodPx).data();
        mean = Gaussian.blur(weight, neighbourhoodPx).data();
    }

    /** The gain with which a predicts b around a pixel. */
    double gain(int pixel) {
        return aa[pixel] > 0 ? ab[pixel] / (double) aa[pixel] : 0;
    }

    /** Mean square of b around a pixel. */
    double meanSquareOfOther(int pixel) {
        return mean[pixel] > 0 ? bb[pixel] / (double) mean[pixel] : 0;
    }

    /** Mean square of what the prediction leaves of b around a pixel. */
    double unexplained(int pixel) {
        return mean[pixel] > 0 ? Math.max(0, bb[pixel] - gain(pixel) * ab[pixel]) / mean[pixel] : 0;
    }
}
