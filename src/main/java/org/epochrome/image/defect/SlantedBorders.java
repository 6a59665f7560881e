package org.epochrome.image.defect;

import java.util.Arrays;
import java.util.BitSet;
import org.epochrome.image.Plane;
import org.epochrome.image.ValueRange;

/**
 * Wedges of one value along a frame's edges, as a stacking that turns its frames leaves them. Their inner side is straight, and light
 * begins there at once; a sky that is black throughout does neither.
 */
final class SlantedBorders {
    /** Fewest columns or rows of a wedge: a line through fewer says little. */
    private static final int FEWEST = 16;
    /** Distance from the straight line up to which an inner side may be ragged, pixels. */
    private static final double RAGGED_PX = 1.5;
    /** Part of the columns or rows that must lie on the line; at corners another wedge joins. */
    private static final double STRAIGHT = 0.8;
    /** Least step from the border to the light within, as a part of the frame's range of values, and in grey levels. */
    private static final double LEAST_STEP = 5e-3;

    private static final double LEAST_STEPS = 3;
    /** Pixels within that are partly border, where frames were turned by interpolation. */
    private static final int SOFT_PX = 2;
    /** Pairs of columns whose slopes are looked at lie this part of the wedge apart. */
    private static final int PART = 3;

    private final Plane plane;
    private final double leastStep;
    private final BitSet found = new BitSet();

    private SlantedBorders(Plane plane, ValueRange range) {
        this.plane = plane;
        leastStep = Math.max(LEAST_STEP * range.width(), LEAST_STEPS * range.step());
    }

    /** The pixels of a plane's wedges; what has no data already does not count. */
    static BitSet of(Plane plane, ValueRange range) {
        SlantedBorders borders = new SlantedBorders(plane, range);
        int right = plane.width() - 1;
        int bottom = plane.height() - 1;
        borders.look(new Side(0, 0, 1, 0, 0, 1, plane.width(), plane.height()));
        borders.look(new Side(0, bottom, 1, 0, 0, -1, plane.width(), plane.height()));
        borders.look(new Side(0, 0, 0, 1, 1, 0, plane.height(), plane.width()));
        borders.look(new Side(right, 0, 0, 1, -1, 0, plane.height(), plane.width()));
        return borders.found;
    }

    /** An edge of the frame: where it begins, the step along it, the step inward, its length, and how far inward the frame goes. */
    private record Side(int x, int y, int alongX, int alongY, int inX, int inY, int length, int depth) {}

    private float at(Side side, int along, int in) {
        return plane.at(side.x + along * side.alongX + in * side.inX, side.y + along * side.alongY + in * side.inY);
    }

    private void look(Side side) {
        look(side, at(side, 0, 0));
        look(side, at(side, side.length - 1, 0));
    }

    private void look(Side side, float border) {
        int[] depths = new int[side.length];
        int[] wedge = new int[side.length];
        int count = 0;
        for (int i = 0; i < side.length; i++) {
            while (depths[i] < side.depth && at(side, i, depths[i]) == border) {
                depths[i]++;
            }
            if (depths[i] > 0 && depths[i] < side.depth) {
                wedge[count++] = i;
            }
        }
        if (count >= FEWEST && isStraight(depths, wedge, count) && isAbrupt(side, depths, wedge, count, border)) {
            for (int k = 0; k < count; k++) {
                mark(side, wedge[k], Math.min(side.depth, depths[wedge[k]] + SOFT_PX));
            }
        }
    }

    private void mark(Side side, int along, int depth) {
        for (int in = 0; in < depth; in++) {
            int x = side.x + along * side.alongX + in * side.inX;
            int y = side.y + along * side.alongY + in * side.inY;
            found.set(y * plane.width() + x);
        }
    }

    /** Whether depths grow or shrink along a line: by the median of slopes and of offsets (Theil 1950, Sen 1968). */
    private static boolean isStraight(int[] depths, int[] wedge, int count) {
        int apart = count / PART;
        double[] slopes = new double[count - apart];
        for (int k = 0; k < slopes.length; k++) {
            int i = wedge[k];
            int j = wedge[k + apart];
            slopes[k] = (double) (depths[j] - depths[i]) / (j - i);
        }
        double slope = median(slopes);
        double[] offsets = new double[count];
        for (int k = 0; k < count; k++) {
            offsets[k] = depths[wedge[k]] - slope * wedge[k];
        }
        double offset = median(offsets.clone());
        long near = Arrays.stream(offsets)
                .filter(o -> Math.abs(o - offset) <= RAGGED_PX)
                .count();
        return near >= STRAIGHT * count;
    }

    private boolean isAbrupt(Side side, int[] depths, int[] wedge, int count, float border) {
        double[] steps = new double[count];
        int n = 0;
        for (int k = 0; k < count; k++) {
            int in = depths[wedge[k]] + SOFT_PX;
            float within = in < side.depth ? at(side, wedge[k], in) : Float.NaN;
            if (!Float.isNaN(within) && within != border) {
                steps[n++] = Math.abs(within - border);
            }
        }
        Arrays.sort(steps, 0, n);
        return n >= FEWEST && n >= STRAIGHT * count && steps[n / 10] > leastStep;
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return values[values.length / 2];
    }
}
