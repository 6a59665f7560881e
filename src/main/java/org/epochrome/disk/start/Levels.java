package org.epochrome.disk.start;

import org.epochrome.disk.FittedDisk;

/**
 * Brightness levels of a frame.
 *
 * @param background sky level
 * @param noise standard deviation of the sky
 * @param top brightness of the disk above the sky
 */
public record Levels(double background, double noise, double top) {
    /** As an earlier fit found them. */
    public static Levels of(FittedDisk earlier) {
        return new Levels(earlier.background(), earlier.noise(), earlier.brightness());
    }
}
