package org.epochrome.io.head;

import java.nio.file.Path;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.text.Message;

/** How large a frame may be. Checked before anything is allocated, so that a damaged header costs nothing. */
public final class ImageLimits {
    static final int SMALLEST_SIDE_PX = 16;
    public static final int LARGEST_SIDE_PX = 16384;

    /** No deflate stream is shorter than this fraction of what it unpacks to. */
    public static final long MOST_DEFLATE_GAIN = 1032;

    private ImageLimits() {}

    /**
     * Refuses an image that is too small to hold a planet, or too large for Epochrome or for this machine.
     *
     * @param bytesPerPixel bytes that one pixel takes while the file is read, all planes together
     */
    public static void check(Path file, long width, long height, long bytesPerPixel) {
        if (width <= 0 || height <= 0) {
            throw new FrameRefused(file, Message.of("frame.headerSize", width, height));
        }
        if (width > LARGEST_SIDE_PX || height > LARGEST_SIDE_PX) {
            throw new FrameRefused(file, Message.of("frame.tooLarge", width, height, LARGEST_SIDE_PX));
        }
        if (width < SMALLEST_SIDE_PX || height < SMALLEST_SIDE_PX) {
            throw new FrameRefused(file, Message.of("frame.tooSmall", width, height, SMALLEST_SIDE_PX));
        }
        // An array cannot hold more elements than an int counts; all else is up to the memory Java was given.
        long needed = width * height * bytesPerPixel;
        if (width * height > Integer.MAX_VALUE - 8L
                || needed > Runtime.getRuntime().maxMemory()) {
            throw new FrameRefused(
                    file,
                    Message.of(
                            "frame.memory", needed >> 20, Runtime.getRuntime().maxMemory() >> 20));
        }
    }

    /**
     * Refuses an image whose packed data are too short to hold it, however well they are packed.
     *
     * @param packed bytes of the packed data
     * @param unpacked bytes of the samples
     * @param gain the most bytes that one packed byte can stand for
     */
    public static void checkPacked(Path file, long packed, long unpacked, long gain) {
        if (packed < unpacked / gain) {
            throw new FrameRefused(file, Message.of("frame.short"));
        }
    }
}
