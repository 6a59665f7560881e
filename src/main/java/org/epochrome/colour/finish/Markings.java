package org.epochrome.colour.finish;

import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.job.Rows;

/** The ratio of a picture to the light of an even globe. */
final class Markings {
    private static final float LEAST = 1e-3f;
    /** Weight of the brightness on the whole: it takes over where nothing is near. */
    private static final float FAR = 1e-4f;

    private Markings() {}

    /**
     * A picture divided by the even globe's light where there is light enough; elsewhere how bright the globe is nearby, and
     * far off it on the whole.
     *
     * @param support where there is light enough, 0 to 1
     * @param reachPx how far the brightness nearby is looked for, standard deviation, pixels
     */
    static Plane of(Plane picture, Plane light, Plane support, double reachPx) {
        int width = picture.width();
        int height = picture.height();
        Plane top = new Plane(width, height);
        Plane bottom = new Plane(width, height);
        Rows.each(height, (from, to) -> {
            for (int i = from * width; i < to * width; i++) {
                if (!Float.isNaN(picture.data()[i])) {
                    top.data()[i] = support.data()[i] * picture.data()[i];
                    bottom.data()[i] = support.data()[i] * light.data()[i];
                }
            }
        });
        float[] v = Gaussian.blur(top, reachPx).data();
        float[] below = Gaussian.blur(bottom, reachPx).data();
        float everywhere = FAR * (float) level(picture, light, support);
        Rows.each(height, (from, to) -> {
            for (int i = from * width; i < to * width; i++) {
                v[i] = Math.max(0, v[i] + everywhere) / (below[i] + FAR);
                float ratio = picture.data()[i] / light.data()[i];
                float trust = support.data()[i];
                if (trust > 0 && Float.isFinite(ratio)) {
                    v[i] += trust * (Math.max(0, ratio) - v[i]);
                }
                v[i] = Math.max(LEAST, v[i]);
            }
        });
        return new Plane(width, height, v);
    }

    /** How bright a picture is as a whole, as a factor on the even globe's light. */
    static double level(Plane picture, Plane light, Plane support) {
        double sum = 0;
        double all = 0;
        for (int i = 0; i < picture.data().length; i++) {
            if (!Float.isNaN(picture.data()[i])) {
                sum += support.data()[i] * picture.data()[i];
                all += support.data()[i] * light.data()[i];
            }
        }
        return all > 0 && sum > 0 ? sum / all : 1;
    }
}
