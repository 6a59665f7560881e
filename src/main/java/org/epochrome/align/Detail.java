package org.epochrome.align;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.View;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.job.Rows;
import org.epochrome.turn.Turned;

/**
 * The markings of one size on a turned frame without its shading, over the part of the disk that is well lit and well
 * seen, zero elsewhere.
 *
 * @param markings the detail, dimensionless
 * @param weight 1 inside that part, falling to 0 at its edge
 * @param grainPx size of the markings, standard deviation, pixels
 * @param drawnPx length over which it is smeared in addition, pixels
 * @param northDeg direction of the pole from image up, counter-clockwise as displayed
 */
public record Detail(Plane markings, Plane weight, double grainPx, double drawnPx, double northDeg) {
    private static final double RIM = 0.92;
    private static final double LEAST_LIGHT = 0.2;
    /**
     * Takes the markings out of a turned frame, sorted by size: each part is the relative departure of the frame over its
     * shading, softened by one width, from the same softened by the next.
     *
     * @param view view of the globe at the epoch, on the turned frame's pixels
     * @param blurPx blur of the turned frame, standard deviation
     * @param grainPx blur to which the detail is softened; no less than the frame's own
     * @param drawnPx length over which the turned frame is smeared in addition
     * @param within markings are compared where more than this part of the wider softening's weight lies inside, 0 to 1: an edge
     *     that is softened passes for a marking that lies still
     * @param widths standard deviations of further softenings, in such blurs, rising
     * @return one part less than there are widths, the finest first
     */
    public static List<Detail> parts(
            Turned turned, View view, double blurPx, double grainPx, double drawnPx, double within, double... widths) {
        Plane inside = inside(turned, view);
        Plane ratio = new Plane(inside.width(), inside.height());
        for (int i = 0; i < ratio.data().length; i++) {
            ratio.data()[i] = inside.data()[i] == 0
                    ? 0
                    : turned.picture().data()[i] / turned.shade().data()[i];
        }
        double own = Math.max(1, blurPx);
        double grain = Math.max(own, grainPx);
        List<Detail> parts = new ArrayList<>();
        Plane finer = null;
        for (int k = 0; k < widths.length; k++) {
            double more = Math.sqrt(grain * grain * (1 + widths[k] * widths[k]) - own * own);
            Plane softened = over(Gaussian.blur(ratio, more), Gaussian.blur(inside, more));
            if (k > 0) {
                double spot = grain * Math.sqrt(1 + widths[k - 1] * widths[k]);
                parts.add(new Detail(
                        departure(finer, softened, inside),
                        eroded(inside, widths[k] * grain, within),
                        spot,
                        drawnPx,
                        view.disk().northAngleDeg()));
            }
            finer = softened;
        }
        return List.copyOf(parts);
    }

    /** 1 where the disk is well lit and well seen, else 0. */
    private static Plane inside(Turned turned, View view) {
        Plane shade = turned.shade();
        float brightest = 0;
        for (float s : shade.data()) {
            brightest = Math.max(brightest, s);
        }
        float least = (float) LEAST_LIGHT * brightest;
        Plane inside = new Plane(shade.width(), shade.height());
        Rows.each(inside.height(), (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < inside.width(); x++) {
                    if (shade.at(x, y) > least
                            && !Float.isNaN(turned.picture().at(x, y))
                            && turned.trust().at(x, y) > 0.98f
                            && view.ellipticRadius(view.pole(x, y), view.side(x, y)) < RIM) {
                        inside.set(x, y, 1);
                    }
                }
            }
        });
        return inside;
    }

    private static Plane departure(Plane fine, Plane coarse, Plane inside) {
        Plane result = new Plane(fine.width(), fine.height());
        for (int i = 0; i < result.data().length; i++) {
            result.data()[i] = inside.data()[i] == 0 ? 0 : fine.data()[i] / coarse.data()[i] - 1;
        }
        return result;
    }

    /** 1 where the whole neighbourhood lies inside, 0 where too much of it does not. */
    private static Plane eroded(Plane inside, double widthPx, double within) {
        Plane weight = Gaussian.blur(inside, widthPx);
        for (int i = 0; i < weight.data().length; i++) {
            weight.data()[i] = (float) Math.max(0, (weight.data()[i] - within) / (1 - within));
        }
        return weight;
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

    /** This detail on pixels binned by a factor. */
    Detail binned(int factor) {
        return factor == 1
                ? this
                : new Detail(
                        Binning.by(factor, markings),
                        Binning.by(factor, weight),
                        grainPx / factor,
                        drawnPx / factor,
                        northDeg);
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
