package org.epochrome.io.identify;

import java.util.List;
import java.util.Objects;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;

/**
 * When a frame was recorded and how that is known.
 *
 * @param span start and end, UTC; of zero length if only one instant is known
 * @param source where it was found, for people: "FITS DATE-OBS + EXPTIME", "file name", "sheet night.csv line 3"
 * @param notes how it was understood where that was not obvious, a sentence each
 */
public record Timing(RecordingSpan span, Message source, List<Message> notes) {
    public Timing {
        Objects.requireNonNull(span);
        Objects.requireNonNull(source);
        notes = List.copyOf(notes);
    }
}
