package org.epochrome.io.head;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.epochrome.image.Encoding;
import org.epochrome.text.Message;

/**
 * The description of an image in its file, without the pixels.
 *
 * @param file where it was read
 * @param width pixels from left to right as displayed
 * @param height pixels from top to bottom as displayed
 * @param planeCount 1 for grey, 3 for red, green, blue
 * @param depth kind of the stored samples for people: "16-bit integer", "32-bit float"
 * @param fullScale largest value that the samples can hold; NaN for floats, which know none
 * @param header keywords of a FITS header; empty in other formats
 * @param geometry how it lies on the sky by its header
 * @param tagged the encoding that the file says its samples have, other than linear; not always true
 * @param notes what a user should know about how the file was understood, a sentence each
 */
public record FrameHead(
        Path file,
        FrameFormat format,
        int width,
        int height,
        int planeCount,
        String depth,
        double fullScale,
        FitsKeywords header,
        HeaderGeometry geometry,
        Optional<Encoding> tagged,
        List<Message> notes) {
    public FrameHead {
        notes = List.copyOf(notes);
    }
}
