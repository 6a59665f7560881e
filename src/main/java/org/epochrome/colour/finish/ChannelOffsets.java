package org.epochrome.colour.finish;

import org.epochrome.text.Message;

/**
 * What is added to linear red, green and blue before the tone, parts of the brightest part of the disk, -0.5 to 0.5 each.
 */
public record ChannelOffsets(double red, double green, double blue) {
    /** Leaves colours as they are. */
    public static final ChannelOffsets NONE = new ChannelOffsets(0, 0, 0);

    private static final double MOST = 0.5;

    public ChannelOffsets {
        if (!(Math.max(Math.abs(red), Math.max(Math.abs(green), Math.abs(blue))) <= MOST)) {
            throw new IllegalArgumentException(Message.text("value.offsets", red, green, blue));
        }
    }
}
