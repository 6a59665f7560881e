package org.epochrome.align;

import org.epochrome.image.Plane;
import org.epochrome.image.Spline;
import org.epochrome.job.Rows;

/**
 * Measures how far the detail of one frame lies from that of another, to a small part of a pixel.
 *
 * <p>Bands differ: a marking may be strong in one, faint or reversed in another. So the one's detail is predicted from
 * the other's with a gain of its own in every neighbourhood, positive or negative, and the shift is sought for which
 * the prediction leaves least (Gauss-Newton; the gains are eliminated at every step). Neighbourhoods where the bands
 * have little in common get little weight.
 */
public final class DetailWitness {
    private static final int MOST_STEPS = 12;
    private static final double SETTLED_PX = 0.002;
    /** Beyond this standard error the detail says nothing worth hearing. */
    private static final double USELESS_PX = 0.5;

    private static final double FARTHEST_PX = 3;
    /** Radius of a neighbourhood with one gain, in grains of the detail. */
    private static final double NEIGHBOURHOOD = 5;

    private DetailWitness() {}

    /**
     * The shift of {@code other} against {@code reference}; {@link Shift#UNKNOWN} if they have too little detail in
     * common.
     *
     * @param startX where to begin the search, pixels
     * @param startY the same
     */
    public static Shift measure(Detail reference, Detail other, double startX, double startY) {
        // Each is smeared like the other too: a lopsided smear would else pass for a shift.
        Spline spline = new Spline(other.smear().of(reference.markings()));
        Plane markings = reference.smear().of(other.markings());
        Spline weightSpline = new Spline(reference.weight());
        double grain = Math.max(reference.grainPx(), other.grainPx());
        double x = startX;
        double y = startY;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] s = normals(spline, weightSpline, markings, other.weight(), x, y, grain);
            double determinant = s[0] * s[2] - s[1] * s[1];
            if (!(determinant > 1e-12 * s[0] * s[2]) || s[0] <= 0) {
                return Shift.UNKNOWN;
            }
            double dx = (s[2] * s[3] - s[1] * s[4]) / determinant;
            double dy = (s[0] * s[4] - s[1] * s[3]) / determinant;
            double length = Math.hypot(dx, dy);
            double held = length > 1 ? 1 / length : 1;
            x += held * dx;
            y += held * dy;
            if (Math.hypot(x - startX, y - startY) > FARTHEST_PX) {
                return Shift.UNKNOWN;
            }
            if (length < SETTLED_PX) {
                // Residuals are alike over the grain of the detail: so many pixels make one independent datum.
                double alike = 4 * Math.PI * grain * grain;
                double sigmaX = Math.sqrt(alike * s[2] / determinant);
                double sigmaY = Math.sqrt(alike * s[0] / determinant);
                return Math.max(sigmaX, sigmaY) > USELESS_PX ? Shift.UNKNOWN : new Shift(x, y, sigmaX, sigmaY);
            }
        }
        return Shift.UNKNOWN;
    }

    /**
     * What part of the detail of {@code other} the detail of {@code reference}, taken with a gain of its own in every
     * neighbourhood, explains where it lies: 0 to 1.
     */
    public static double agreement(Detail reference, Detail other) {
        Plane weight = new Plane(other.weight().width(), other.weight().height());
        for (int i = 0; i < weight.data().length; i++) {
            weight.data()[i] = reference.weight().data()[i] * other.weight().data()[i];
        }
        double grain = Math.max(reference.grainPx(), other.grainPx());
        LocalGain local = new LocalGain(reference.markings(), other.markings(), weight, NEIGHBOURHOOD * grain);
        double explained = 0;
        double all = 0;
        for (int i = 0; i < weight.data().length; i++) {
            if (weight.data()[i] > 0) {
                double total = local.meanSquareOfOther(i);
                explained += weight.data()[i] * (total - local.unexplained(i));
                all += weight.data()[i] * total;
            }
        }
        return all > 0 ? explained / all : 0;
    }

    /** Normal equations of the shift at a trial shift: xx, xy, yy, x, y. */
    private static double[] normals(
            Spline reference,
            Spline referenceWeight,
            Plane other,
            Plane otherWeight,
            double shiftX,
            double shiftY,
            double grain) {
        int width = other.width();
        int height = other.height();
        Plane predicted = new Plane(width, height);
        Plane weight = new Plane(width, height);
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < width; x++) {
                    float w = otherWeight.at(x, y);
                    if (w > 0) {
                        weight.set(x, y, w * Math.max(0, referenceWeight.at(x - shiftX, y - shiftY)));
                        predicted.set(x, y, reference.at(x - shiftX, y - shiftY));
                    }
                }
            }
        });
        LocalGain local = new LocalGain(predicted, other, weight, NEIGHBOURHOOD * grain);
        float[] a = predicted.data();
        double[][] rows = new double[height][];
        Rows.each(height, (from, to) -> {
            for (int y = Math.max(1, from); y < Math.min(height - 1, to); y++) {
                double[] sum = new double[5];
                for (int x = 1; x < width - 1; x++) {
                    int i = y * width + x;
                    if (weight.data()[i] <= 0) {
                        continue;
                    }
                    double gain = local.gain(i);
                    double gx = -gain * 0.5 * (a[i + 1] - a[i - 1]);
                    double gy = -gain * 0.5 * (a[i + width] - a[i - width]);
                    double residual = other.data()[i] - gain * a[i];
                    double u = weight.data()[i] / Math.max(local.unexplained(i), 1e-9);
                    sum[0] += u * gx * gx;
                    sum[1] += u * gx * gy;
                    sum[2] += u * gy * gy;
                    sum[3] += u * gx * residual;
                    sum[4] += u * gy * residual;
                }
                rows[y] = sum;
            }
        });
        double[] total = new double[5];
        for (double[] row : rows) {
            for (int k = 0; row != null && k < 5; k++) {
                total[k] += row[k];
            }
        }
        return total;
    }
}
