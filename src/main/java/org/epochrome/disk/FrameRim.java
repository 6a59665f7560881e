package org.epochrome.disk;

import java.util.Arrays;
import org.epochrome.image.Margins;
import org.epochrome.image.Plane;
import org.epochrome.image.ValueRange;

/**
 * What the rim of a frame, within borders that hold no sky, tells about the sky: mostly sky, but a halo may reach it, and the
 * sky may slope.
 *
 * @param background median of the rim
 * @param noise standard deviation of the sky's noise, from median absolute deviations
 * @param right by how much the sky brightens a pixel to the right; 0 if that is little
 * @param down the same downward
 */
record FrameRim(double background, double noise, double right, double down) {
    /** Width of the rim, pixels. */
    private static final int WIDTH = 4;
    /** Length of the pieces of the rim in which noise is told from gradients, pixels. */
    private static final int PIECE = 24;
    /** Part of the rim's scatter below which noise is so small that the rest must be gradients. */
    private static final double MOSTLY_GRADIENT = 0.5;
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
            throw new DiskNotFound("the rim of the image holds no data; use one with sky all around the disk");
        }
        int lines = Math.min(WIDTH, Math.min(inner.right() - inner.left(), inner.bottom() - inner.top()));
        double background = median(all);
        double scatter = 1.4826 * medianDistance(all, background);
        double local = localNoise(frame, inner, lines);
        double least = SLOPING * ValueRange.of(frame).width();
        double across = side(frame, inner.right() - lines, inner.top(), inner.right(), inner.bottom())
                - side(frame, inner.left(), inner.top(), inner.left() + lines, inner.bottom());
        double along = side(frame, inner.left(), inner.bottom() - lines, inner.right(), inner.bottom())
                - side(frame, inner.left(), inner.top(), inner.right(), inner.top() + lines);
        return new FrameRim(
                background,
                local < MOSTLY_GRADIENT * scatter ? local : scatter,
                Math.abs(across) > least ? across / Math.max(1, inner.right() - inner.left() - lines) : 0,
                Math.abs(along) > least ? along / Math.max(1, inner.bottom() - inner.top() - lines) : 0);
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

    /** Standard deviation about straight lines through short pieces of the rim; endless where there are none. */
    private static double localNoise(Plane frame, Margins inner, int lines) {
        int pieces = 2 * lines * ((inner.right() - inner.left()) / PIECE + (inner.bottom() - inner.top()) / PIECE);
        double[] left = new double[pieces * PIECE];
        int n = 0;
        for (int line = 0; line < lines; line++) {
            for (int x = inner.left(); x + PIECE <= inner.right(); x += PIECE) {
                n = addPiece(frame, x, inner.top() + line, 1, 0, left, n);
                n = addPiece(frame, x, inner.bottom() - 1 - line, 1, 0, left, n);
            }
            for (int y = inner.top(); y + PIECE <= inner.bottom(); y += PIECE) {
                n = addPiece(frame, inner.left() + line, y, 0, 1, left, n);
                n = addPiece(frame, inner.right() - 1 - line, y, 0, 1, left, n);
            }
        }
        if (n == 0) {
            return Double.POSITIVE_INFINITY;
        }
        // A straight line takes up two of the piece's degrees of freedom.
        return 1.4826 * medianDistance(Arrays.copyOf(left, n), 0) * Math.sqrt(PIECE / (PIECE - 2.0));
    }

    private static int addPiece(Plane frame, int x, int y, int stepX, int stepY, double[] left, int n) {
        double sum = 0;
        double tilt = 0;
        double squares = 0;
        for (int i = 0; i < PIECE; i++) {
            double from = i - 0.5 * (PIECE - 1);
            double v = frame.at(x + i * stepX, y + i * stepY);
            sum += v;
            tilt += v * from;
            squares += from * from;
        }
        if (Double.isNaN(sum)) {
            return n;
        }
        for (int i = 0; i < PIECE; i++) {
            double line = sum / PIECE + tilt / squares * (i - 0.5 * (PIECE - 1));
            left[n + i] = frame.at(x + i * stepX, y + i * stepY) - line;
        }
        return n + PIECE;
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
