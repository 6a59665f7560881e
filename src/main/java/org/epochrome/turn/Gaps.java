package org.epochrome.turn;

import java.util.ArrayDeque;
import org.epochrome.image.Plane;
import org.epochrome.job.Rows;

/**
 * Where a frame holds no data: holes, which what lies around them can fill as long as no other frame does, and all that lies beyond
 * the edge of what the camera saw, which nothing can.
 */
final class Gaps {
    /** Widest dead line that does not part a frame, pixels. */
    private static final int NARROW_PX = 4;

    private final int width;
    private final int height;
    private final boolean[] empty;
    private final boolean[] beyond;

    private Gaps(int width, int height, boolean[] empty, boolean[] beyond) {
        this.width = width;
        this.height = height;
        this.empty = empty;
        this.beyond = beyond;
    }

    /** The gaps of a plane: its NaN. */
    static Gaps of(Plane plane) {
        boolean[] empty = new boolean[plane.data().length];
        boolean any = false;
        for (int i = 0; i < empty.length; i++) {
            empty[i] = Float.isNaN(plane.data()[i]);
            any |= empty[i];
        }
        Gaps gaps = new Gaps(plane.width(), plane.height(), empty, new boolean[empty.length]);
        if (any) {
            gaps.findBeyond();
        }
        return gaps;
    }

    /** Whether a pixel is a gap of any kind. */
    boolean isEmpty(int x, int y) {
        return empty[y * width + x];
    }

    /** Whether a pixel lies beyond the edge of what the frame saw. */
    boolean isBeyond(int x, int y) {
        return beyond[y * width + x];
    }

    /** All gaps that reach the plane's edge, unless they are narrow. */
    private void findBeyond() {
        ArrayDeque<Integer> open = new ArrayDeque<>();
        for (int x = 0; x < width; x++) {
            reach(x, 0, open);
            reach(x, height - 1, open);
        }
        for (int y = 0; y < height; y++) {
            reach(0, y, open);
            reach(width - 1, y, open);
        }
        while (!open.isEmpty()) {
            int p = open.poll();
            int x = p % width;
            int y = p / width;
            reach(x - 1, y, open);
            reach(x + 1, y, open);
            reach(x, y - 1, open);
            reach(x, y + 1, open);
        }
    }

    private void reach(int x, int y, ArrayDeque<Integer> open) {
        if (x < 0 || y < 0 || x >= width || y >= height) {
            return;
        }
        int p = y * width + x;
        if (empty[p] && !beyond[p] && !isNarrow(x, y, 1, 0) && !isNarrow(x, y, 0, 1)) {
            beyond[p] = true;
            open.add(p);
        }
    }

    /** Whether data lies near on both sides. */
    private boolean isNarrow(int x, int y, int stepX, int stepY) {
        int before = distance(x, y, -stepX, -stepY, NARROW_PX);
        int after = distance(x, y, stepX, stepY, NARROW_PX);
        return before > 0 && after > 0 && before + after <= NARROW_PX + 1;
    }

    /** Pixels to the next data in a direction; 0 if there is none so near. */
    private int distance(int x, int y, int stepX, int stepY, int most) {
        for (int n = 1; n <= most; n++) {
            int i = x + n * stepX;
            int j = y + n * stepY;
            if (i < 0 || j < 0 || i >= width || j >= height) {
                return 0;
            }
            if (!empty[j * width + i]) {
                return n;
            }
        }
        return 0;
    }

    /** Fills a plane's gaps in place by the next data in the four directions, the nearer the more; 0 where there is none. */
    void fill(Plane plane) {
        float[] data = plane.data();
        Rows.each(height, (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < width; x++) {
                    if (empty[y * width + x]) {
                        data[y * width + x] = around(data, x, y);
                    }
                }
            }
        });
    }

    private float around(float[] data, int x, int y) {
        int[][] steps = {{-1, 0}, {1, 0}, {0, -1}, {0, 1}};
        double sum = 0;
        double weights = 0;
        for (int[] step : steps) {
            int n = distance(x, y, step[0], step[1], Math.max(width, height));
            if (n > 0) {
                sum += data[(y + n * step[1]) * width + x + n * step[0]] / n;
                weights += 1.0 / n;
            }
        }
        return weights > 0 ? (float) (sum / weights) : 0;
    }
}
