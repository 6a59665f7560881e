package org.epochrome.image.defect;

import java.util.Arrays;
import java.util.function.IntFunction;
import org.epochrome.image.Plane;
import org.epochrome.image.ValueRange;

/**
 * The part of a frame within its borders: lines without data along its edges, or lines of one value as alignment leaves them where
 * the frames of a stack did not overlap. A sky that is black throughout is no border: there the light begins gradually.
 *
 * @param left first column within
 * @param top first row within
 * @param right first column beyond
 * @param bottom first row beyond
 */
public record Margins(int left, int top, int right, int bottom) {
    /** Least mean step from a border to the line within, as a part of the frame's range of values. */
    private static final double LEAST_STEP = 1.5e-3;
    /** So much larger than the step to the next line it is. */
    private static final double ABRUPT = 3;
    /** Lines within that are partly of the border too, where frames were moved by parts of a pixel: one at least, and at most. */
    private static final int MOST_SOFT_PX = 4;
    /** Step to the next line, as a part of its light, from which a line counts as partly border. */
    private static final double SOFT_STEP = 0.4;
    /** Lines over which a border may be ragged. */
    private static final int RAGGED_PX = 3;
    /** Part of a line behind a ragged border that must hold light: a disk on a black sky begins with a short one. */
    private static final double MOSTLY_FILLED = 0.8;

    /** Finds the borders of a plane; none if nothing would be left. */
    public static Margins of(Plane plane) {
        // Each side ends in one of these two corners.
        Margins found = of(plane, plane.at(0, 0));
        return found.isWhole(plane) ? of(plane, plane.at(plane.width() - 1, plane.height() - 1)) : found;
    }

    private static Margins of(Plane plane, float border) {
        Margins whole = new Margins(0, 0, plane.width(), plane.height());
        Margins inner = whole;
        while (true) {
            Margins next = inner.peeled(plane, border);
            if (next.isEmpty()) {
                return whole;
            }
            if (next.equals(inner)) {
                return inner.proven(plane, border);
            }
            inner = next;
        }
    }

    /** Whether nothing lies outside. */
    public boolean isWhole(Plane plane) {
        return left == 0 && top == 0 && right == plane.width() && bottom == plane.height();
    }

    /** Whether a pixel lies within. */
    public boolean contains(int x, int y) {
        return x >= left && x < right && y >= top && y < bottom;
    }

    private boolean isEmpty() {
        return right - left < 8 || bottom - top < 8;
    }

    private Margins peeled(Plane plane, float border) {
        return new Margins(
                left + (line(plane, left, top, 0, 1, border).isEven(border) ? 1 : 0),
                top + (line(plane, left, top, 1, 0, border).isEven(border) ? 1 : 0),
                right - (line(plane, right - 1, top, 0, 1, border).isEven(border) ? 1 : 0),
                bottom - (line(plane, left, bottom - 1, 1, 0, border).isEven(border) ? 1 : 0));
    }

    /** Only those borders beyond which the light begins at once. */
    private Margins proven(Plane plane, float border) {
        if (isWhole(plane)) {
            return this;
        }
        double least = LEAST_STEP * ValueRange.of(plane).width();
        int l = proven(i -> line(plane, left + i, top, 0, 1, border), left, border, least);
        int t = proven(i -> line(plane, left, top + i, 1, 0, border), top, border, least);
        int r = proven(i -> line(plane, right - 1 - i, top, 0, 1, border), plane.width() - right, border, least);
        int b = proven(i -> line(plane, left, bottom - 1 - i, 1, 0, border), plane.height() - bottom, border, least);
        return new Margins(l, t, plane.width() - r, plane.height() - b);
    }

    /**
     * Width of a border with its soft edge; 0 if it is none.
     *
     * @param lines inward from the first line that is not all border
     * @param outside lines that are
     */
    private static int proven(IntFunction<Line> lines, int outside, float border, double least) {
        if (outside == 0) {
            return 0;
        }
        for (int k = 0; k <= RAGGED_PX; k++) {
            Line first = lines.apply(k);
            if ((k == 0 || first.filled > MOSTLY_FILLED) && isAbrupt(first, lines.apply(k + 1), border, least)) {
                int within = k + 1;
                while (within < k + MOST_SOFT_PX
                        && isSoft(
                                lines.apply(within), lines.apply(within + 1), lines.apply(within + 2), border, least)) {
                    within++;
                }
                return outside + within;
            }
        }
        return 0;
    }

    /** Whether light begins at once in the first line within: all along it, or by a step that does not go on. */
    private static boolean isAbrupt(Line first, Line second, float border, double least) {
        if (Float.isNaN(border)) {
            return true;
        }
        double step = first.mean - border;
        double next = second.mean - first.mean;
        return first.lowTenth - border > least
                || border - first.highTenth > least
                || (Math.abs(step) > least && Math.abs(step) > ABRUPT * Math.abs(next));
    }

    /** Whether a line is partly border still: the step to the next one inward is much of what that holds, and does not go on. */
    private static boolean isSoft(Line line, Line inward, Line further, float border, double least) {
        double step = Math.abs(inward.mean - line.mean);
        return step > Math.max(least, SOFT_STEP * Math.abs(inward.mean - border))
                && step > ABRUPT * Math.abs(further.mean - inward.mean);
    }

    /** What lies along one line: the extremes of its values, the tenths at both ends, the mean, and the part that is not border; NaN without data. */
    private record Line(double least, double most, double lowTenth, double highTenth, double mean, double filled) {
        boolean isEven(float border) {
            return Double.isNaN(mean) || (least == border && most == border);
        }
    }

    private Line line(Plane plane, int x, int y, int stepX, int stepY, float border) {
        double[] values = new double[Math.max(right - left, bottom - top)];
        int n = 0;
        double sum = 0;
        int filled = 0;
        for (int i = x, j = y; i < right && j < bottom; i += stepX, j += stepY) {
            float v = plane.at(i, j);
            if (!Float.isNaN(v)) {
                values[n++] = v;
                sum += v;
                filled += v == border ? 0 : 1;
            }
        }
        if (n == 0) {
            return new Line(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0);
        }
        Arrays.sort(values, 0, n);
        return new Line(values[0], values[n - 1], values[n / 10], values[n - 1 - n / 10], sum / n, (double) filled / n);
    }
}
