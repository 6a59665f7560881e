package org.epochrome.align;

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
 * @param drawnPx length over which it is drawn out on top of that, pixels
 */
public record Detail(Plane markings, Plane weight, double grainPx, double drawnPx) {
    private static final double RIM = 0.92;
    private static final double LEAST_LIGHT = 0.2;
    /** Detail is softened a little, against noise. */
    private static final double SOFTENED = 1.044;

    /**
     * Takes the markings out of a turned frame.
     *
     * @param view view of the globe at the epoch, on the turned frame's pixels
     * @param blurPx blur of the turned frame, standard deviation
     * @param grainPx blur to which the detail is softened; no less than the frame's own
     * @param drawnPx length over which the turned frame is drawn out on top of that
     */
    public static Detail of(Turned turned, View view, double blurPx, double grainPx, double drawnPx) {
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
        double own = Math.max(1, blurPx);
        double grain = Math.max(own, grainPx);
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
        return new Detail(markings, weight, softened, drawnPx);
    }

    /**
     * By what factor the mean square of the markings' slopes exceeds that of noise, in the direction where it does least.
     *
     * @param along mean square of the noise's slopes along a direction
     * @param across the same at right angles to it
     * @param directionDeg that direction, from image up, counter-clockwise as displayed
     */
    public double clearOf(double along, double across, double directionDeg) {
        int width = markings.width();
        double uu = 0;
        double uv = 0;
        double vv = 0;
        double all = 0;
        double sin = -Math.sin(Math.toRadians(directionDeg));
        double cos = -Math.cos(Math.toRadians(directionDeg));
        float[] m = markings.data();
        for (int y = 1; y < markings.height() - 1; y++) {
            for (int x = 1; x < width - 1; x++) {
                int i = y * width + x;
                double w = weight.data()[i];
                if (w > 0) {
                    double dx = 0.5 * (m[i + 1] - m[i - 1]);
                    double dy = 0.5 * (m[i + width] - m[i - width]);
                    double u = sin * dx + cos * dy;
                    double v = cos * dx - sin * dy;
                    uu += w * u * u;
                    uv += w * u * v;
                    vv += w * v * v;
                    all += w;
                }
            }
        }
        // The smaller eigenvalue after both directions are measured in the noise's own slopes.
        double a = uu / (all * along);
        double b = uv / (all * Math.sqrt(along * across));
        double c = vv / (all * across);
        return 0.5 * (a + c) - Math.hypot(0.5 * (a - c), b);
    }

    /** Blur of which a spot would have the area that this detail's spots have, pixels. */
    double spotPx() {
        return Math.sqrt(grainPx * Math.hypot(grainPx, drawnPx / Math.sqrt(12)));
    }

    /** The same on pixels binned by a factor. */
    Detail binned(int factor) {
        return factor == 1
                ? this
                : new Detail(
                        Binning.by(factor, markings), Binning.by(factor, weight), grainPx / factor, drawnPx / factor);
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
