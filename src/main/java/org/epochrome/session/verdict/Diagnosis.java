package org.epochrome.session.verdict;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.epochrome.text.Message;

/**
 * The best explanation of what contradicts itself in a session.
 *
 * @param cause what is wrong
 * @param files the frames that it is about; empty if it is about all of them
 * @param words the explanation, one sentence
 * @param confidence how sure it is
 * @param remedy what mends it, if a change of the recipe does
 */
public record Diagnosis(Cause cause, List<Path> files, Message words, Confidence confidence, Optional<Remedy> remedy) {
    public Diagnosis {
        files = List.copyOf(files);
    }

    /** What can be wrong with a session. */
    public enum Cause {
        /** The time of a frame is wrong. */
        TIME,
        /** The order of the times is reversed. */
        REVERSED_TIMES,
        /** The times of two frames are exchanged. */
        EXCHANGED_TIMES,
        /** A frame is there twice. */
        DUPLICATE,
        /** North is wrong for all frames. */
        NORTH,
        /** A frame is rotated relative to the others. */
        ROTATED,
        /** Frames are mirrored, or not mirrored as assumed. */
        MIRRORED,
        /** The mount is of another kind. */
        MOUNT,
        /** The site is wrong. */
        SITE,
        /** Frames are encoded for a screen. */
        ENCODED,
        /** Frames were sharpened. */
        SHARPENED
    }
}
