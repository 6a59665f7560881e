package org.epochrome.image;

import java.util.function.IntUnaryOperator;
import org.epochrome.job.Rows;

/**
 * The least and the largest value around each pixel.
 *
 * @param least smallest value within a square
 * @param most largest value within it
 */
public record LocalRange(Plane least, Plane most) {
    /**
     * Looks around each pixel; NaN counts as nothing, and stays where there is nothing else.
     *
     * @param reachPx half the square's side, pixels
     */
    public static LocalRange of(Plane plane, int reachPx) {
        return new LocalRange(extreme(plane, reachPx, 1), extreme(plane, reachPx, -1));
    }

    /** The least values, of the plane times a sign. */
    private static Plane extreme(Plane plane, int reachPx, int sign) {
        Plane across = new Plane(plane.width(), plane.height());
        along(plane.width(), plane.height(), reachPx, i -> i, plane.data(), across.data(), sign);
        Plane both = new Plane(plane.width(), plane.height());
        int width = plane.width();
        int height = plane.height();
        along(height, width, reachPx, i -> i % height * width + i / height, across.data(), both.data(), sign);
        return both;
    }

    /** One direction: lines of some length whose pixels lie where the order says. */
    private static void along(
            int length, int lines, int reachPx, IntUnaryOperator order, float[] in, float[] out, int sign) {
        Rows.each(lines, (from, to) -> {
            for (int line = from; line < to; line++) {
                for (int k = 0; k < length; k++) {
                    float found = Float.NaN;
                    for (int n = Math.max(0, k - reachPx); n <= Math.min(length - 1, k + reachPx); n++) {
                        float v = in[order.applyAsInt(line * length + n)];
                        if (Float.isNaN(found) || sign * v < sign * found) {
                            found = v;
                        }
                    }
                    out[order.applyAsInt(line * length + k)] = found;
                }
            }
        });
    }
}
