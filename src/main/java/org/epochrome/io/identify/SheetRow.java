package org.epochrome.io.identify;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.image.Encoding;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;

/**
 * What a sheet says about one frame.
 *
 * @param file the frame, resolved against the folder of the sheet
 * @param band word for the band, empty if the sheet leaves it open
 * @param span start and end, empty if the sheet leaves them open
 * @param mirrored whether it is mirrored, empty if the sheet leaves that open
 * @param encoding of its samples, empty if the sheet leaves that open
 * @param source the place of the row for people: "sheet night.csv line 3"
 */
public record SheetRow(
        Path file,
        Optional<String> band,
        Optional<RecordingSpan> span,
        Optional<Boolean> mirrored,
        Optional<Encoding> encoding,
        String source) {
    /** What is known of a frame whose encoding is left open. */
    public SheetRow(
            Path file, Optional<String> band, Optional<RecordingSpan> span, Optional<Boolean> mirrored, String source) {
        this(file, band, span, mirrored, Optional.empty(), source);
    }

    /** This row with another encoding of the samples; empty to leave that open. */
    public SheetRow with(Optional<Encoding> other) {
        return new SheetRow(file, band, span, mirrored, other, source);
    }

    /** What is known of a frame whose orientation is left open. */
    public SheetRow(Path file, Optional<String> band, Optional<RecordingSpan> span, String source) {
        this(file, band, span, Optional.empty(), source);
    }

    /**
     * Whether a word says that a frame is mirrored.
     *
     * @throws IllegalArgumentException if it is neither yes nor no
     */
    public static boolean mirrored(String word) {
        return switch (word.toLowerCase(Locale.ROOT)) {
            case "yes" -> true;
            case "no" -> false;
            default -> throw new IllegalArgumentException(Message.text("sheet.mirrored", word));
        };
    }
}
