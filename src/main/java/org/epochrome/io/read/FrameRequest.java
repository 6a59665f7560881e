package org.epochrome.io.read;

import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import org.epochrome.io.identify.SheetRow;

/**
 * A frame that the user asks for, with the user's settings for it.
 *
 * @param file the image
 * @param band word for its band given as an option ("R", "colour", a name of his own), empty to find it out
 * @param row what a sheet says, which takes precedence over the option
 */
public record FrameRequest(Path file, Optional<String> band, Optional<SheetRow> row) {
    public FrameRequest {
        Objects.requireNonNull(file);
        Objects.requireNonNull(band);
        Objects.requireNonNull(row);
    }

    /** A file without any settings. */
    public static FrameRequest of(Path file) {
        return new FrameRequest(file, Optional.empty(), Optional.empty());
    }

    /** A file whose band is given. */
    public static FrameRequest of(Path file, String band) {
        return new FrameRequest(file, Optional.of(band), Optional.empty());
    }

    /** The file of a row in a sheet. */
    public static FrameRequest of(SheetRow row) {
        return new FrameRequest(row.file(), Optional.empty(), Optional.of(row));
    }
}
