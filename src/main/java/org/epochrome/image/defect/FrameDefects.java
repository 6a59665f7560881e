package org.epochrome.image.defect;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.image.Plane;

/**
 * A plane without what the camera or the stacking has spoilt: struck pixels, dead columns and rows, borders and the overexposed.
 *
 * @param masked the plane with NaN in their place; the plane itself if there are none
 * @param spots hot or dead pixels and pixels hit by cosmic rays
 * @param lines dead columns and rows
 * @param border pixels in borders of one value
 * @param clipped overexposed pixels
 */
public record FrameDefects(Plane masked, int spots, int lines, int border, int clipped) {

    /** Finds those of a plane. */
    public static FrameDefects of(Plane plane) {
        Plane masked = plane.copy();
        Margins margins = Margins.of(plane);
        int border = 0;
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                if (!margins.contains(x, y)) {
                    border += remove(masked, y * plane.width() + x);
                }
            }
        }
        border += SlantedBorders.of(plane).stream().map(p -> remove(masked, p)).sum();
        int lines = DeadLines.remove(masked);
        int spots = 0;
        boolean[] struck = SpotFilter.struck(masked);
        for (int p = 0; p < struck.length; p++) {
            spots += struck[p] ? remove(masked, p) : 0;
        }
        int clipped = 0;
        boolean[] full = Plateau.in(masked);
        for (int p = 0; p < full.length; p++) {
            clipped += full[p] ? remove(masked, p) : 0;
        }
        boolean clean = border + clipped + lines + spots == 0;
        return new FrameDefects(clean ? plane : masked, spots, lines, border, clipped);
    }

    private static int remove(Plane plane, int p) {
        boolean there = !Float.isNaN(plane.data()[p]);
        plane.data()[p] = Float.NaN;
        return there ? 1 : 0;
    }

    /** What was left out, a sentence; none if there is nothing. */
    public List<String> notes() {
        List<String> parts = new ArrayList<>();
        count(parts, spots, "hot, dead or cosmic-ray pixel");
        count(parts, lines, "dead column or row", "dead columns or rows");
        count(parts, border, "border pixel");
        count(parts, clipped, "overexposed pixel");
        return parts.isEmpty() ? List.of() : List.of("Ignored as defective: " + String.join(", ", parts) + ".");
    }

    private static void count(List<String> parts, int number, String one) {
        count(parts, number, one, one + "s");
    }

    private static void count(List<String> parts, int number, String one, String several) {
        if (number > 0) {
            parts.add(number + " " + (number == 1 ? one : several));
        }
    }
}
