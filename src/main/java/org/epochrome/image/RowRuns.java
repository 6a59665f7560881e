package org.epochrome.image;

import java.util.Arrays;

/** Stretches of the rows of an image, for work that needs only a part of it. */
public final class RowRuns {
    private final int[][] rows;

    private RowRuns(int[][] rows) {
        this.rows = rows;
    }

    /** All of an image. */
    public static RowRuns all(int width, int height) {
        int[][] rows = new int[height][];
        Arrays.fill(rows, new int[] {0, width});
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
