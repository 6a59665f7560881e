package org.epochrome.image.defect;

import java.util.Arrays;
import org.epochrome.image.Plane;
import org.epochrome.image.ValueRange;

/**
 * Finds columns and rows that differ from the two beside them along their whole length, as dead or hot lines of a sensor do. A belt
 * or a limb crosses only part of a line.
 */
final class DeadLines {
    /** Part of a line's pixels that must lie off in the same sense; noise and sky give half. */
    private static final double SAME_SENSE = 0.95;
    /** Least median difference, as a part of the frame's range of values: less does no harm. */
    private static final double LEAST = 0.005;
    /** So many times the median difference of the lines near it. */
    private static final double OUTSTANDING = 8;

    private static final int NEAR = 8;
    private static final int FEWEST_PIXELS = 32;

    private DeadLines() {}

    /**
     * Sets such lines to NaN.
     *
     * @return how many there are
     */
    static int remove(Plane plane, ValueRange range) {
        double least = LEAST * range.width();
        return remove(plane, plane.width(), plane.height(), 1, plane.width(), least)
                + remove(plane, plane.height(), plane.width(), plane.width(), 1, least);
    }

    private static int remove(Plane plane, int lines, int length, int across, int along, double least) {
        boolean[] even = new boolean[lines];
        for (int i = 1; i < lines - 1; i++) {
            even[i] = isEven(plane, i * across, length, across, along);
        }
        double[] typical = new double[lines];
        for (int i = 1; i < lines - 1; i++) {
            // Only lines near one that may be dead are compared with it.
            typical[i] = anyNear(even, i) ? typical(plane, i * across, length, across, along) : 0;
        }
        int found = 0;
        for (int i = 1; i < lines - 1; i++) {
            double size = Math.abs(typical[i]);
            // The lines beside it differ by half, because of it.
            boolean peak = size > Math.abs(typical[i - 1]) && size > Math.abs(typical[i + 1]);
            if (even[i] && peak && size > Math.max(least, OUTSTANDING * near(typical, i))) {
                for (int k = 0; k < length; k++) {
                    plane.data()[i * across + k * along] = Float.NaN;
                }
                found++;
            }
        }
        return found;
    }

    private static boolean anyNear(boolean[] even, int line) {
        for (int i = Math.max(0, line - NEAR); i <= Math.min(even.length - 1, line + NEAR); i++) {
            if (even[i]) {
                return true;
            }
        }
        return false;
    }

    /** Whether nearly all pixels of a line differ in one sense from the means of those beside them. */
    private static boolean isEven(Plane plane, int start, int length, int across, int along) {
        int n = 0;
        int above = 0;
        for (int k = 0; k < length; k++) {
            double difference = difference(plane, start + k * along, across);
            if (!Double.isNaN(difference)) {
                above += difference > 0 ? 1 : 0;
                n++;
            }
        }
        return n >= FEWEST_PIXELS && Math.max(above, n - above) > SAME_SENSE * n;
    }

    /** The median difference of a line's pixels from those beside them; 0 if there are too few. */
    private static double typical(Plane plane, int start, int length, int across, int along) {
        double[] off = new double[length];
        int n = 0;
        for (int k = 0; k < length; k++) {
            double difference = difference(plane, start + k * along, across);
            if (!Double.isNaN(difference)) {
                off[n++] = difference;
            }
        }
        Arrays.sort(off, 0, n);
        return n < FEWEST_PIXELS ? 0 : off[n / 2];
    }

    private static double difference(Plane plane, int p, int across) {
        float[] data = plane.data();
        return data[p] - 0.5 * (data[p - across] + data[p + across]);
    }

    /** The median size of the differences of the lines near one, those beside it aside: they differ because of it. */
    private static double near(double[] typical, int line) {
        double[] sizes = new double[2 * NEAR];
        int n = 0;
        for (int i = Math.max(0, line - NEAR); i <= Math.min(typical.length - 1, line + NEAR); i++) {
            if (Math.abs(i - line) > 1) {
                sizes[n++] = Math.abs(typical[i]);
            }
        }
        Arrays.sort(sizes, 0, n);
        return sizes[n / 2];
    }
}
