package org.epochrome.io.file;

import java.nio.file.Path;

/** An input that cannot be used. The message is one sentence for the user that begins with the name of the file. */
public final class FrameRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient Path file;

    /**
     * Refuses a file.
     *
     * @param problem what is wrong and what to do, as the rest of a sentence that began with the name of the file
     */
    public FrameRefused(Path file, String problem) {
        this(file, problem, null);
    }

    /** Refuses a file because of a failure underneath. */
    public FrameRefused(Path file, String problem, Throwable cause) {
        super(VisibleText.message(nameOf(file) + " " + problem), cause);
        this.file = file;
    }

    /** The file that was refused. */
    public Path file() {
        return file;
    }

    public static String nameOf(Path file) {
        Path name = file.getFileName();
        return name == null ? file.toString() : name.toString();
    }
}
