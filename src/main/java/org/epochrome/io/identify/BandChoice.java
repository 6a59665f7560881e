package org.epochrome.io.identify;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.epochrome.image.Band;
import org.epochrome.text.Message;

/**
 * The bands of a frame's planes and how they are known.
 *
 * @param planes the band of a mono frame, or red, green and blue of a one-shot-colour frame
 * @param source where it was found, for people: "FITS FILTER", "file name", "option"
 * @param ordered whether the user said so himself, by sheet or option
 * @param notes how it was understood where that was not obvious, a sentence each
 */
public record BandChoice(List<Band> planes, String source, boolean ordered, List<Message> notes) {
    public BandChoice {
        planes = List.copyOf(planes);
        Objects.requireNonNull(source);
        notes = List.copyOf(notes);
    }

    /** The band of a mono frame; empty for a one-shot-colour frame, which has red, green and blue at once. */
    public Optional<Band> band() {
        return planes.size() == 1 ? Optional.of(planes.get(0)) : Optional.empty();
    }
}
