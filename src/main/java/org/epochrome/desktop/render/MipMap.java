package org.epochrome.desktop.render;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.List;
import org.epochrome.job.Rows;

/** A picture on coarser and coarser pixels: a large one that is shown small would flicker, and be slow to draw. */
public final class MipMap {
    /** Pictures of this size are small enough as they are. */
    private static final int SMALL_PX = 1200;

    private MipMap() {}

    /**
     * A picture on its own or coarser pixels.
     *
     * @param argb its pixels
     * @param times how many pixels of the finest one of its pixels is wide
     */
    public record Level(IntBuffer argb, int width, int height, int times) {
        /** Whether it is the same picture: millions of pixels are not compared. */
        @Override
        public boolean equals(Object other) {
            return this == other;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(this);
        }
    }

    /** The picture itself, and its halves as long as they are large. */
    static List<Level> of(IntBuffer argb, int width, int height) {
        List<Level> levels = new ArrayList<>();
        Level level = new Level(argb, width, height, 1);
        levels.add(level);
        while (Math.max(level.width, level.height) > SMALL_PX) {
            level = half(level);
            levels.add(level);
        }
        return List.copyOf(levels);
    }

    private static Level half(Level from) {
        int width = from.width / 2;
        int height = from.height / 2;
        int[] half = new int[width * height];
        Rows.each(height, (first, end) -> {
            for (int y = first; y < end; y++) {
                for (int x = 0; x < width; x++) {
                    int at = 2 * y * from.width + 2 * x;
                    half[y * width + x] = mean(
                            from.argb.get(at),
                            from.argb.get(at + 1),
                            from.argb.get(at + from.width),
                            from.argb.get(at + from.width + 1));
                }
            }
        });
        return new Level(IntBuffer.wrap(half), width, height, 2 * from.times);
    }

    /** Opaque mean of four pixels, rounded, two channels at a time where they cannot run into each other. */
    private static int mean(int a, int b, int c, int d) {
        int redBlue = (a & 0xff00ff) + (b & 0xff00ff) + (c & 0xff00ff) + (d & 0xff00ff) + 0x20002;
        int green = (a & 0xff00) + (b & 0xff00) + (c & 0xff00) + (d & 0xff00) + 0x200;
        return 0xff000000 | ((redBlue >> 2) & 0xff00ff) | ((green >> 2) & 0xff00);
    }

    /**
     * The level whose pixels are nearest to those of the screen but not wider.
     *
     * @param scale how many pixels of the screen one of the finest level's is wide
     */
    public static Level fitting(List<Level> levels, double scale) {
        Level best = levels.get(0);
        for (Level level : levels) {
            if (level.times * scale <= 1) {
                best = level;
            }
        }
        return best;
    }
}
