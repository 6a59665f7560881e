package org.epochrome.disk.start;

import java.util.Arrays;
import org.epochrome.image.Plane;
import org.epochrome.image.ValueRange;
import org.epochrome.image.defect.Margins;
import org.epochrome.text.Message;

/**
 * What the rim of a frame, within borders that hold no sky, shows of the sky: mostly sky, but a halo may reach it, and the
 * sky may slope.
 *
 * @param background median of the rim
 * @param noise standard deviation of the sky without its slope, from the median absolute deviation
 * @param right by how much the sky brightens a pixel to the right; 0 if that is little
 * @param down the same downward
 */
record FrameRim(double background, double noise, double right, double down) {
    /** Width of the rim, pixels. */
    private static final int WIDTH = 4;
    /** Difference between opposite sides, as a part of the frame's range of values, from which the sky slopes. */
    private static final double SLOPING = 0.05;

    /**
     * Looks at the rim of a frame.
     *
     * @throws DiskNotFound if there is no data in it
     */
    static FrameRim of(Plane frame) {
        Margins inner = Margins.of(frame);
        double[] all = values(frame, inner);
        if (all.length == 0) {
            throw new DiskNotFound(Message.of("disk.noEdges"));
        }
        int lines = Math.min(WIDTH, Math.min(inner.right() - inner.left(), inner.bottom() - inner.top()));
        double background = median(all);
        double least = SLOPING * ValueRange.of(frame).width();
        double across = side(frame, inner.right() - lines, inner.top(), inner.right(), inner.bottom())
                - side(frame, inner.left(), inner.top(), inner.left() + lines, inner.bottom());
        double along = side(frame, inner.left(), inner.bottom() - lines, inner.right(), inner.bottom())
                - side(frame, inner.left(), inner.top(), inner.right(), inner.top() + lines);
        FrameRim level = new FrameRim(
                background,
                1.4826 * medianDistance(all, background),
                Math.abs(across) > least ? across / Math.max(1, inner.right() - inner.left() - lines) : 0,
                Math.abs(along) > least ? along / Math.max(1, inner.bottom() - inner.top() - lines) : 0);
        Plane even = level.evened(frame);
        // What a slope spreads is no noise; what a halo spreads is left, for no model knows a halo so well.
        return even == frame
                ? level
                : new FrameRim(
                        background, 1.4826 * medianDistance(values(even, inner), background), level.right, level.down);
    }

    /** A frame without the slope; the frame itself if there is none. */
    Plane evened(Plane frame) {
        if (right == 0 && down == 0) {
            return frame;
        }
        Plane result = frame.copy();
        for (int y = 0; y < frame.height(); y++) {
            for (int x = 0; x < frame.width(); x++) {
                double slope = right * (x - 0.5 * (frame.width() - 1)) + down * (y - 0.5 * (frame.height() - 1));
                result.set(x, y, (float) (frame.at(x, y) - slope));
            }
        }
        return result;
    }

    private static double[] values(Plane frame, Margins inner) {
        double[] values = new double[2 * WIDTH * (frame.width() + frame.height())];
        int n = 0;
        for (int y = inner.top(); y < inner.bottom(); y++) {
            boolean rim = y < inner.top() + WIDTH || y >= inner.bottom() - WIDTH;
            for (int x = inner.left(); x < inner.right(); x++) {
                if (!rim && x == inner.left() + WIDTH) {
                    x = Math.max(x, inner.right() - WIDTH);
                }
                float v = frame.at(x, y);
                if (!Float.isNaN(v)) {
                    values[n++] = v;
                }
            }
        }
        return Arrays.copyOf(values, n);
    }

    /** The median of a part of a frame; NaN without data. */
    private static double side(Plane frame, int left, int top, int right, int bottom) {
        double[] values = new double[(right - left) * (bottom - top)];
        int n = 0;
        for (int y = top; y < bottom; y++) {
            for (int x = left; x < right; x++) {
                if (!Float.isNaN(frame.at(x, y))) {
                    values[n++] = frame.at(x, y);
                }
            }
        }
        return n == 0 ? Double.NaN : median(Arrays.copyOf(values, n));
    }

    private static double medianDistance(double[] values, double from) {
        return median(Arrays.stream(values).map(v -> Math.abs(v - from)).toArray());
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
