package org.epochrome.image.defect;

import org.epochrome.image.Plane;
import org.epochrome.image.ValueRange;

/**
 * The pixels of a patch that all hold its largest value, but for rounding. Where a camera clips, these lie side by side and are far more
 * than the pixels just below them, for the brightness goes on falling at the usual rate where the plateau ends.
 *
 * <p>An even disk in few grey levels can look the same. There a plateau counts as clipped only at a value at which a format
 * ends.
 */
public final class Plateau {
    /** How many times more often than just below it the largest value occurs on a clipped disk. */
    private static final double SPIKE = 5;
    /** Part of the plateau's pixels whose neighbours all belong to it too. */
    private static final double INNER = 0.25;
    /** Width of "just below", as a part of the largest value above the sky; a grey level at least. */
    private static final double BELOW = 1e-3;
    /** What a resampling of equal values may leave between them, in units of the largest's last place. */
    private static final int ROUNDING = 4;
    /** Part of the range of values from which on pixels may belong to a disk. */
    private static final double BRIGHT = 0.2;
    /** Bits of the formats' whole numbers. */
    private static final int FEWEST_BITS = 8;

    private static final int MOST_BITS = 16;

    private Plateau() {}

    /** For each pixel of a plane whether it is clipped. */
    static boolean[] in(Plane plane, ValueRange range) {
        float[] data = plane.data();
        boolean[] bright = new boolean[data.length];
        for (int p = 0; p < data.length; p++) {
            bright[p] = data[p] > range.at(BRIGHT);
        }
        boolean[] clipped = new boolean[data.length];
        if (clipped(plane, bright, range.least()) > 0) {
            float equal = equal(largest(plane, bright));
            for (int p = 0; p < data.length; p++) {
                clipped[p] = data[p] >= equal;
            }
        }
        return clipped;
    }

    /**
     * How many pixels of a patch are clipped.
     *
     * @param member which pixels of the frame belong to the patch
     */
    public static int clipped(Plane frame, boolean[] member, double background) {
        float[] data = frame.data();
        float largest = largest(frame, member);
        float equal = equal(largest);
        float second = Float.NEGATIVE_INFINITY;
        for (int p = 0; p < data.length; p++) {
            second = member[p] && data[p] < equal && data[p] > second ? data[p] : second;
        }
        double level = largest - second;
        double range = BELOW * (largest - background);
        int top = 0;
        int inner = 0;
        int below = 0;
        for (int p = 0; p < data.length; p++) {
            if (member[p] && data[p] >= equal) {
                top++;
                inner += surrounded(frame, p, equal) ? 1 : 0;
            } else if (member[p] && data[p] >= largest - Math.max(level, range)) {
                below++;
            }
        }
        boolean plateau = top > SPIKE * below && inner > INNER * top;
        return plateau && (level <= range || endsFormat(largest)) ? top : 0;
    }

    private static float largest(Plane plane, boolean[] member) {
        float[] data = plane.data();
        float largest = Float.NEGATIVE_INFINITY;
        for (int p = 0; p < data.length; p++) {
            largest = member[p] && data[p] > largest ? data[p] : largest;
        }
        return largest;
    }

    /** The least value that counts as equal to the largest. */
    private static float equal(float largest) {
        return largest - ROUNDING * Math.ulp(largest);
    }

    private static boolean surrounded(Plane frame, int p, float least) {
        int x = p % frame.width();
        int y = p / frame.width();
        return x > 0
                && x < frame.width() - 1
                && y > 0
                && y < frame.height() - 1
                && frame.at(x - 1, y) >= least
                && frame.at(x + 1, y) >= least
                && frame.at(x, y - 1) >= least
                && frame.at(x, y + 1) >= least;
    }

    /** Whether a value is the largest of some bits, perhaps moved to the upper end of 16 bits or scaled to 1. */
    private static boolean endsFormat(float value) {
        boolean ends = value == 1;
        for (int bits = FEWEST_BITS; bits <= MOST_BITS; bits++) {
            int all = (1 << bits) - 1;
            ends |= value == all || value == all << (MOST_BITS - bits);
        }
        return ends;
    }
}
