package org.epochrome.session.locate;

import java.nio.file.Path;
import org.epochrome.disk.start.DiskNotFound;

/** No disk could be fitted in a frame; the message is one sentence that begins with the file. */
public final class NoDiskInFrame extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Path file;

    NoDiskInFrame(Path file, DiskNotFound cause) {
        super(file.getFileName() + ": " + cause.getMessage() + ".", cause);
        this.file = file;
    }

    /** The frame. */
    public Path file() {
        return file;
    }
}
