package org.epochrome.io;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.epochrome.image.Band;

/**
 * The band of a frame and how it is known.
 *
 * @param band the band; empty for a one-shot-colour frame, which has red, green and blue at once
 * @param source where it was found, for people: "FITS FILTER", "file name", "option"
 * @param ordered whether the user said so himself, by sheet or option
 * @param notes how it was understood where that was not obvious, a sentence each
 */
public record BandChoice(Optional<Band> band, String source, boolean ordered, List<String> notes) {
    public BandChoice {
        Objects.requireNonNull(band);
        Objects.requireNonNull(source);
        notes = List.copyOf(notes);
    }
}
