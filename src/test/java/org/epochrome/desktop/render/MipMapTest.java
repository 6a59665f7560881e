package org.epochrome.desktop.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.nio.IntBuffer;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Means of pixels, from plain arithmetic. */
class MipMapTest {
    private static final int WIDTH = 2401;
    private static final int HEIGHT = 1300;

    private static int at(int x, int y) {
        return 0xff000000 | (x * 7 + y) % 256 << 16 | (x + 3 * y) % 256 << 8 | (x * y) % 256;
    }

    private static List<MipMap.Level> levels() {
        int[] argb = new int[WIDTH * HEIGHT];
        for (int i = 0; i < argb.length; i++) {
            argb[i] = at(i % WIDTH, i / WIDTH);
        }
        return MipMap.of(IntBuffer.wrap(argb), WIDTH, HEIGHT);
    }

    @Test
    void eachPixelIsTheMeanOfFour() {
        MipMap.Level half = levels().get(1);
        assertEquals(1200, half.width());
        assertEquals(650, half.height());
        for (int y = 0; y < half.height(); y += 13) {
            for (int x = 0; x < half.width(); x += 17) {
                int got = half.argb().get(y * half.width() + x);
                for (int shift : new int[] {0, 8, 16, 24}) {
                    int sum = 0;
                    for (int k = 0; k < 4; k++) {
                        sum += at(2 * x + k % 2, 2 * y + k / 2) >> shift & 255;
                    }
                    assertEquals((sum + 2) / 4, got >> shift & 255, x + " " + y + " " + shift);
                }
            }
        }
    }

    @Test
    void theCoarsestThatLosesNothingIsShown() {
        List<MipMap.Level> levels = levels();
        assertEquals(2, levels.size());
        assertSame(levels.get(0), MipMap.fitting(levels, 1));
        assertSame(levels.get(0), MipMap.fitting(levels, 0.51));
        assertSame(levels.get(1), MipMap.fitting(levels, 0.5));
        assertSame(levels.get(1), MipMap.fitting(levels, 0.01));
    }
}
