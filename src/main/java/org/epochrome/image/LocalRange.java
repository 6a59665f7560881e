package org.epochrome.image;

import java.util.Arrays;
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

    /** The least values of the plane times a sign, times that sign. */
    private static Plane extreme(Plane plane, int reachPx, int sign) {
        int width = plane.width();
        int height = plane.height();
        int tall = height + 2 * reachPx;
        float[] across = new float[tall * width];
        Arrays.fill(across, 0, reachPx * width, Float.POSITIVE_INFINITY);
        Arrays.fill(across, (reachPx + height) * width, tall * width, Float.POSITIVE_INFINITY);
        Rows.each(height, (from, to) -> {
            float[] line = new float[width + 2 * reachPx];
            for (int y = from; y < to; y++) {
                Arrays.fill(line, Float.POSITIVE_INFINITY);
                for (int x = 0; x < width; x++) {
                    float v = sign * plane.at(x, y);
                    line[x + reachPx] = Float.isNaN(v) ? Float.POSITIVE_INFINITY : v;
                }
                leastOfNext(line, 1, 0, 1, 2 * reachPx + 1);
                System.arraycopy(line, 0, across, (y + reachPx) * width, width);
            }
        });
        Rows.each(width, (from, to) -> leastOfNext(across, width, from, to, 2 * reachPx + 1));
        Plane both = new Plane(width, height);
        for (int i = 0; i < both.data().length; i++) {
            both.data()[i] = across[i] == Float.POSITIVE_INFINITY ? Float.NaN : sign * across[i];
        }
        return both;
    }

    /**
     * Puts in the place of each value the least of it and those that follow, in some columns. A window twice as wide is the lesser of
     * two that lie side by side.
     *
     * @param values rows of {@code width}
     * @param count how many values of a column are compared
     */
    private static void leastOfNext(float[] values, int width, int from, int to, int count) {
        int rows = values.length / width;
        int known = 1;
        while (known < count) {
            int step = Math.min(known, count - known);
            for (int row = 0; row < rows - step; row++) {
                int p = row * width;
                for (int x = from; x < to; x++) {
                    values[p + x] = Math.min(values[p + x], values[p + step * width + x]);
                }
            }
            known += step;
        }
    }
}
