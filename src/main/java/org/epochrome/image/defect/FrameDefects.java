package org.epochrome.image.defect;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.image.Plane;
import org.epochrome.image.ValueRange;
import org.epochrome.text.Message;

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
        ValueRange range = ValueRange.of(plane);
        Margins margins = Margins.of(plane);
        int border = 0;
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                if (!margins.contains(x, y)) {
                    border += remove(masked, y * plane.width() + x);
                }
            }
        }
        border += SlantedBorders.of(plane, range).stream()
                .map(p -> remove(masked, p))
                .sum();
        range = border > 0 ? ValueRange.of(masked) : range;
        int lines = DeadLines.remove(masked, range);
        int spots = 0;
        range = lines > 0 ? ValueRange.of(masked) : range;
        boolean[] struck = SpotFilter.struck(masked, range);
        for (int p = 0; p < struck.length; p++) {
            spots += struck[p] ? remove(masked, p) : 0;
        }
        int clipped = 0;
        range = spots > 0 ? ValueRange.of(masked) : range;
        boolean[] full = Plateau.in(masked, range);
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
    public List<Message> notes() {
        List<Message> parts = new ArrayList<>();
        count(parts, spots, Message.of(spots == 1 ? "defect.spot" : "defect.spots", spots));
        count(parts, lines, Message.of(lines == 1 ? "defect.line" : "defect.lines", lines));
        count(parts, border, Message.of(border == 1 ? "defect.borderPixel" : "defect.border", border));
        count(parts, clipped, Message.of(clipped == 1 ? "defect.overexposedPixel" : "defect.overexposed", clipped));
        return parts.stream()
                .reduce((a, b) -> Message.of("defect.and", a, b))
                .map(all -> Message.of("defect.ignored", all))
                .stream()
                .toList();
    }

    private static void count(List<Message> parts, int number, Message words) {
        if (number > 0) {
            parts.add(words);
        }
    }
}
