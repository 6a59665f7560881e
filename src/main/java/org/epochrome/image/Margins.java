package org.epochrome.image;

import java.util.Arrays;

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
    /** Lines within are partly of the border too where frames were moved by parts of a pixel. */
    private static final int SOFT_PX = 1;

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
                left + (line(plane, left, top, 0, 1).isEven(border) ? 1 : 0),
                top + (line(plane, left, top, 1, 0).isEven(border) ? 1 : 0),
                right - (line(plane, right - 1, top, 0, 1).isEven(border) ? 1 : 0),
                bottom - (line(plane, left, bottom - 1, 1, 0).isEven(border) ? 1 : 0));
    }

    /** Only those borders beyond which the light begins at once. */
    private Margins proven(Plane plane, float border) {
        double least = LEAST_STEP * ValueRange.of(plane).width();
        boolean l = left > 0 && isAbrupt(line(plane, left, top, 0, 1), line(plane, left + 1, top, 0, 1), border, least);
        boolean t = top > 0 && isAbrupt(line(plane, left, top, 1, 0), line(plane, left, top + 1, 1, 0), border, least);
        boolean r = right < plane.width()
                && isAbrupt(line(plane, right - 1, top, 0, 1), line(plane, right - 2, top, 0, 1), border, least);
        boolean b = bottom < plane.height()
                && isAbrupt(line(plane, left, bottom - 1, 1, 0), line(plane, left, bottom - 2, 1, 0), border, least);
        return new Margins(
                l ? left + SOFT_PX : 0,
                t ? top + SOFT_PX : 0,
                r ? right - SOFT_PX : plane.width(),
                b ? bottom - SOFT_PX : plane.height());
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

    /** What lies along one line: the extremes of its values, the tenths at both ends, and the mean; NaN without data. */
    private record Line(double least, double most, double lowTenth, double highTenth, double mean) {
        boolean isEven(float border) {
            return Double.isNaN(mean) || (least == border && most == border);
        }
    }

    private Line line(Plane plane, int x, int y, int stepX, int stepY) {
        double[] values = new double[Math.max(right - left, bottom - top)];
        int n = 0;
        double sum = 0;
        for (int i = x, j = y; i < right && j < bottom; i += stepX, j += stepY) {
            float v = plane.at(i, j);
            if (!Float.isNaN(v)) {
                values[n++] = v;
                sum += v;
            }
        }
        if (n == 0) {
            return new Line(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
        }
        Arrays.sort(values, 0, n);
        return new Line(values[0], values[n - 1], values[n / 10], values[n - 1 - n / 10], sum / n);
    }
}
