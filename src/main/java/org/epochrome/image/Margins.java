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

    private static final int MOST_SOFT_PX = 4;
    /** Part of the third line within that has other values than the border unless the light of the sky begins gradually. */
    private static final double MOSTLY = 0.7;

    private static final double WHOLE = 0.97;
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
                left + (line(plane, border, left, top, 0, 1).isEven(border) ? 1 : 0),
                top + (line(plane, border, left, top, 1, 0).isEven(border) ? 1 : 0),
                right - (line(plane, border, right - 1, top, 0, 1).isEven(border) ? 1 : 0),
                bottom - (line(plane, border, left, bottom - 1, 1, 0).isEven(border) ? 1 : 0));
    }

    /** Only those borders beyond which the light begins at once. */
    private Margins proven(Plane plane, float border) {
        double least = LEAST_STEP * ValueRange.of(plane).width();
        Line[] l = lines(plane, border, left, top, 0, 1, 1, 0);
        Line[] t = lines(plane, border, left, top, 1, 0, 0, 1);
        Line[] r = lines(plane, border, right - 1, top, 0, 1, -1, 0);
        Line[] b = lines(plane, border, left, bottom - 1, 1, 0, 0, -1);
        return new Margins(
                left > 0 && isAbrupt(l, border, least) ? left + soft(l) : 0,
                top > 0 && isAbrupt(t, border, least) ? top + soft(t) : 0,
                right < plane.width() && isAbrupt(r, border, least) ? right - soft(r) : plane.width(),
                bottom < plane.height() && isAbrupt(b, border, least) ? bottom - soft(b) : plane.height());
    }

    /** The first lines within a border. */
    private Line[] lines(Plane plane, float border, int x, int y, int alongX, int alongY, int inwardX, int inwardY) {
        Line[] lines = new Line[MOST_SOFT_PX + 1];
        for (int i = 0; i < lines.length; i++) {
            lines[i] = line(plane, border, x + i * inwardX, y + i * inwardY, alongX, alongY);
        }
        return lines;
    }

    /** How many lines within are partly of the border. */
    private static int soft(Line[] lines) {
        int soft = SOFT_PX;
        while (soft < MOST_SOFT_PX && lines[soft].differing < WHOLE) {
            soft++;
        }
        return lines[soft].differing < WHOLE ? SOFT_PX : soft;
    }

    /** Whether light begins at once in the first line within: all along it, or by a step that does not go on. */
    private static boolean isAbrupt(Line[] lines, float border, double least) {
        Line first = lines[0];
        Line second = lines[1];
        if (Float.isNaN(border)) {
            return true;
        }
        double step = first.mean - border;
        double next = second.mean - first.mean;
        return lines[2].differing > MOSTLY
                || first.lowTenth - border > least
                || border - first.highTenth > least
                || (Math.abs(step) > least && Math.abs(step) > ABRUPT * Math.abs(next));
    }

    /**
     * What lies along one line: the extremes of its values, the tenths at both ends, and the mean; NaN without data; and the part that
     * differs from the border's value.
     */
    private record Line(double least, double most, double lowTenth, double highTenth, double mean, double differing) {
        boolean isEven(float border) {
            return Double.isNaN(mean) || (least == border && most == border);
        }
    }

    private Line line(Plane plane, float border, int x, int y, int stepX, int stepY) {
        double[] values = new double[Math.max(right - left, bottom - top)];
        int n = 0;
        int differing = 0;
        double sum = 0;
        for (int i = x, j = y; i < right && j < bottom; i += stepX, j += stepY) {
            float v = plane.at(i, j);
            if (!Float.isNaN(v)) {
                differing += v == border ? 0 : 1;
                values[n++] = v;
                sum += v;
            }
        }
        if (n == 0) {
            return new Line(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0);
        }
        Arrays.sort(values, 0, n);
        return new Line(
                values[0], values[n - 1], values[n / 10], values[n - 1 - n / 10], sum / n, (double) differing / n);
    }
}
