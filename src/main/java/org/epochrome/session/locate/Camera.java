package org.epochrome.session.locate;

import org.epochrome.io.head.FrameHead;
import org.epochrome.session.recipe.Exposure;

/**
 * What took some of the frames: it is turned against the sky as it is, so their north angles are one.
 *
 * @param width pixels of a frame
 * @param height pixels of a frame
 * @param mirrored whether something in front of it reflects
 */
public record Camera(int width, int height, boolean mirrored) {
    /** Frames of one size and sense are taken to come from one camera. */
    public static Camera of(Exposure exposure, boolean mirrored) {
        FrameHead head = exposure.frame().head();
        return new Camera(head.width(), head.height(), mirrored);
    }
}
