package org.epochrome.desktop.render;

import java.nio.IntBuffer;
import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.image.Plane;

/**
 * How often each level occurs in a picture.
 *
 * @param linear in the linear cube, from 0 to its brightest pixel, by channel
 * @param display in the picture on the screen, from 0 to 255, by channel
 */
public record Levels(List<int[]> linear, List<int[]> display) {
    public static final Levels NONE = new Levels(List.of(), List.of());

    private static final int STEPS = 128;

    /** The levels of a combination's cube, and of a picture. */
    public static Levels of(ColourCube cube, ScreenPicture picture) {
        float most = 0;
        for (Plane plane : cube.planes()) {
            for (float value : plane.data()) {
                most = Math.max(most, value);
            }
        }
        float brightest = most;
        return new Levels(
                cube.planes().stream().map(p -> counted(p, brightest)).toList(),
                List.of(counted(picture.argb(), 16), counted(picture.argb(), 8), counted(picture.argb(), 0)));
    }

    private static int[] counted(Plane plane, float most) {
        int[] counts = new int[STEPS];
        for (float value : plane.data()) {
            if (value >= 0 && most > 0) {
                counts[Math.min(STEPS - 1, (int) (STEPS * value / most))]++;
            }
        }
        return counts;
    }

    private static int[] counted(IntBuffer argb, int shift) {
        int[] counts = new int[STEPS];
        for (int i = 0; i < argb.limit(); i++) {
            counts[(argb.get(i) >> shift & 255) * STEPS / 256]++;
        }
        return counts;
    }
}
