package org.epochrome.disk;

import org.epochrome.image.Plane;

/**
 * How the sky's brightness changes over a frame.
 *
 * @param right per pixel along the rows, in the plane's units
 * @param down per pixel along the columns
 */
public record SkySlope(double right, double down) {
    /** An even sky. */
    public static final SkySlope NONE = new SkySlope(0, 0);

    public SkySlope times(double factor) {
        return new SkySlope(right * factor, down * factor);
    }

    /** A frame whose sky is as bright everywhere as it is at the disk's centre. */
    Plane evened(Plane frame, Disk disk) {
        Plane even = frame.copy();
        for (int y = 0; y < frame.height(); y++) {
            for (int x = 0; x < frame.width(); x++) {
                even.set(x, y, (float) (frame.at(x, y) - right * (x - disk.x()) - down * (y - disk.y())));
            }
        }
        return even;
    }
}
