package org.epochrome.image.blur;

import java.util.Arrays;
import org.epochrome.image.Plane;

/** Stretches of the rows of an image, for work that needs only a part of it. */
public final class RowRuns {
    private final int[][] rows;

    private RowRuns(int[][] rows) {
        this.rows = rows;
    }

    /** One stretch per row: everything that light within a reach of it could get to, in columns and rows apart. */
    static RowRuns reached(Plane plane, int reach) {
        int width = plane.width();
        int height = plane.height();
        int[] from = new int[height];
        int[] to = new int[height];
        for (int y = 0; y < height; y++) {
            int row = y * width;
            while (from[y] < width && plane.data()[row + from[y]] == 0) {
                from[y]++;
            }
            to[y] = width;
            while (to[y] > from[y] && plane.data()[row + to[y] - 1] == 0) {
                to[y]--;
            }
        }
        int[][] rows = new int[height][];
        for (int y = 0; y < height; y++) {
            int least = width;
            int most = 0;
            for (int k = Math.max(0, y - reach); k <= Math.min(height - 1, y + reach); k++) {
                if (from[k] < to[k]) {
                    least = Math.min(least, from[k]);
                    most = Math.max(most, to[k]);
                }
            }
            rows[y] = least < most ? new int[] {Math.max(0, least - reach), Math.min(width, most + reach)} : new int[0];
        }
        return new RowRuns(rows);
    }

    /** Which pixels belong. */
    @FunctionalInterface
    public interface Member {
        boolean at(int x, int y);
    }

    /** The pixels of an image that belong. */
    public static RowRuns where(int width, int height, Member member) {
        int[][] rows = new int[height][];
        for (int y = 0; y < height; y++) {
            int[] ends = new int[width + 1];
            int n = 0;
            boolean inside = false;
            for (int x = 0; x < width; x++) {
                if (member.at(x, y) != inside) {
                    ends[n++] = x;
                    inside = !inside;
                }
            }
            if (inside) {
                ends[n++] = width;
            }
            rows[y] = Arrays.copyOf(ends, n);
        }
        return new RowRuns(rows);
    }

    /** Adds a weighted stretch of one array to a stretch of another. */
    static void add(float[] to, int at, float[] what, int from, int count, float weight) {
        for (int i = 0; i < count; i++) {
            to[at + i] += weight * what[from + i];
        }
    }

    /** Number of runs in a row. */
    int count(int y) {
        return rows[y].length / 2;
    }

    /** First column of a run. */
    int from(int y, int run) {
        return rows[y][2 * run];
    }

    /** The column after a run. */
    int to(int y, int run) {
        return rows[y][2 * run + 1];
    }
}
