package org.epochrome.io.head;

import java.nio.file.Path;
import org.epochrome.io.file.FrameRefused;

/** How large a frame may be. Checked before anything is allocated, so that a damaged header costs nothing. */
public final class ImageLimits {
    static final int SMALLEST_SIDE_PX = 16;
    public static final int LARGEST_SIDE_PX = 16384;

    private ImageLimits() {}

    /**
     * Refuses an image that is too small to hold a planet, or too large for Epochrome or for this machine.
     *
     * @param bytesPerPixel bytes that one pixel takes while the file is read, all planes together
     */
    public static void check(Path file, long width, long height, long bytesPerPixel) {
        if (width <= 0 || height <= 0) {
            throw new FrameRefused(
                    file,
                    "is damaged: its header gives a size of " + width + "x" + height
                            + " pixels; copy or save it again.");
        }
        if (width > LARGEST_SIDE_PX || height > LARGEST_SIDE_PX) {
            throw new FrameRefused(
                    file,
                    "has " + width + "x" + height + " pixels according to its header, more than " + LARGEST_SIDE_PX
                            + " on a side; crop it to the planet.");
        }
        if (width < SMALLEST_SIDE_PX || height < SMALLEST_SIDE_PX) {
            throw new FrameRefused(
                    file,
                    "has only " + width + "x" + height + " pixels; a planet needs at least " + SMALLEST_SIDE_PX
                            + " on a side.");
        }
        // An array cannot hold more elements than an int counts; all else is up to the memory Java was given.
        long needed = width * height * bytesPerPixel;
        if (width * height > Integer.MAX_VALUE - 8L
                || needed > Runtime.getRuntime().maxMemory()) {
            throw new FrameRefused(
                    file,
                    "needs " + (needed >> 20) + " MB of memory, but Java has only "
                            + (Runtime.getRuntime().maxMemory() >> 20) + " MB; crop the image or raise -Xmx.");
        }
    }
}
