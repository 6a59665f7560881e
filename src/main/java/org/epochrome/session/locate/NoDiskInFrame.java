package org.epochrome.session.locate;

import java.nio.file.Path;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.text.Message;
import org.epochrome.text.Refusal;

/** No disk could be fitted in a frame; the message is one sentence that begins with the file. */
public final class NoDiskInFrame extends Refusal {
    private static final long serialVersionUID = 1L;

    private final transient Path file;

    NoDiskInFrame(Path file, DiskNotFound cause) {
        super(Message.of("disk.notInFrame", file.getFileName(), cause.message()), cause);
        this.file = file;
    }

    /** The frame. */
    public Path file() {
        return file;
    }
}
