package org.epochrome.io.read;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.io.identify.Timing;
import org.epochrome.text.Message;

/**
 * One image made from one recording, with all that is known of it.
 *
 * @param file where it was read
 * @param planes one plane, or red, green and blue of a one-shot-colour camera
 * @param band the band of the one plane; empty for one-shot colour
 * @param timing when it was recorded
 * @param object the body that its header names, if any
 * @param fullScale largest value that its samples can have; NaN for floats
 * @param depth kind of its samples for people: "16-bit integer"
 * @param notes what a user should know about it, a sentence each
 */
public record Frame(
        Path file,
        List<Plane> planes,
        Optional<Band> band,
        Timing timing,
        Optional<Body> object,
        double fullScale,
        String depth,
        List<Message> notes) {
    public Frame {
        planes = List.copyOf(planes);
        notes = List.copyOf(notes);
    }
}
