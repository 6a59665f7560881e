package org.epochrome.io.head;

import java.util.List;
import org.epochrome.image.Plane;
import org.epochrome.text.Message;

/**
 * An image as it is stored in its file: values as stored (after BZERO and BSCALE in FITS), neither scaled nor clipped, row 0
 * on top, NaN where the file has no number.
 *
 * @param head the description of the image in the file
 * @param planes one grey plane, or red, green and blue
 * @param notes what a user should know about the pixels, a sentence each; includes those of the head
 */
public record FrameFile(FrameHead head, List<Plane> planes, List<Message> notes) {
    public FrameFile {
        planes = List.copyOf(planes);
        notes = List.copyOf(notes);
    }
}
