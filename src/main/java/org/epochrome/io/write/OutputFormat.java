package org.epochrome.io.write;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.text.Message;

/** The file formats that results are written in, by the extension of the name. */
public enum OutputFormat {
    /** Linear 32-bit floats. */
    FITS(".fits", ".fit", ".fts"),
    /** Finished picture with 16 bits. */
    TIFF(".tif", ".tiff"),
    /** Finished picture with 16 bits. */
    PNG(".png"),
    /** Finished picture with 8 bits, slightly lossy. */
    JPEG(".jpg", ".jpeg");

    private final List<String> suffixes;

    OutputFormat(String... suffixes) {
        this.suffixes = List.of(suffixes);
    }

    /**
     * The format for a name.
     *
     * @throws OutputRefused if the suffix is none of these
     */
    public static OutputFormat of(Path file) {
        String name = FrameRefused.nameOf(file).toLowerCase(Locale.ROOT);
        for (OutputFormat format : values()) {
            if (format.suffixes.stream().anyMatch(name::endsWith)) {
                return format;
            }
        }
        throw new OutputRefused(file, Message.of("output.pictureName"));
    }
}
