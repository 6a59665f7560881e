package org.epochrome.session;

import java.util.List;
import java.util.Optional;

/**
 * A moon or shadow that was found.
 *
 * @param name of the moon; empty if no table has it
 * @param shadow whether it is the moon's shadow
 * @param radiusPx of its disk on the output
 * @param x its place at the epoch on the output, pixels
 * @param y the same
 * @param frames what was found in each frame that holds it
 */
public record MoonResult(
        Optional<String> name, boolean shadow, double radiusPx, double x, double y, List<InFrame> frames) {
    /**
     * What one frame says.
     *
     * @param exposure the plane
     * @param predicted its place by the table, or by the course through all frames if no table has it; frame's pixels
     * @param fitted its place by the fit to this frame
     * @param used its place on the course that all frames agree on
     * @param sigmaPx standard error of the fitted place
     * @param level brightness of the moon, 1 for the even globe's brightest part; of a shadow the part of light let through
     * @param plain whether the frame shows it plainly, so that its place counted
     */
    public record InFrame(
            Exposure exposure,
            PixelOffset predicted,
            PixelOffset fitted,
            PixelOffset used,
            double sigmaPx,
            double level,
            boolean plain) {}
}
