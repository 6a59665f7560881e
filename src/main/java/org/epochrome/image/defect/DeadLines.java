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
    static int remove(Plane plane) {
        double least = LEAST * ValueRange.of(plane).width();
        return remove(plane, plane.width(), plane.height(), 1, plane.width(), least)
                + remove(plane, plane.height(), plane.width(), plane.width(), 1, least);
    }

    private static int remove(Plane plane, int lines, int length, int across, int along, double least) {
        double[] typical = new double[lines];
        boolean[] even = new boolean[lines];
        for (int i = 1; i < lines - 1; i++) {
            double[] off = new double[length];
            int n = 0;
            int above = 0;
            for (int k = 0; k < length; k++) {
                int p = i * across + k * along;
                float[] data = plane.data();
                double difference = data[p] - 0.5 * (data[p - across] + data[p + across]);
                if (!Double.isNaN(difference)) {
                    above += difference > 0 ? 1 : 0;
                    off[n++] = difference;
                }
            }
            Arrays.sort(off, 0, n);
            typical[i] = n < FEWEST_PIXELS ? 0 : off[n / 2];
            even[i] = n >= FEWEST_PIXELS && Math.max(above, n - above) > SAME_SENSE * n;
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
