package org.epochrome.io.file;

import java.nio.file.Path;
import org.epochrome.text.Message;
import org.epochrome.text.Refusal;
import org.epochrome.text.Wording;

/** An output that cannot be written. The message is one sentence for the user that begins with the name of the file. */
public final class OutputRefused extends Refusal {
    private static final long serialVersionUID = 1L;
    private final transient Path file;

    /**
     * Refuses to write a file.
     *
     * @param problem what is wrong and what to do, as the rest of a sentence that began with the name of the file
     */
    public OutputRefused(Path file, Message problem) {
        this(file, problem, null);
    }

    /** Refuses to write a file because of a failure underneath. */
    public OutputRefused(Path file, Message problem, Throwable cause) {
        super(Message.of("file.refused", FrameRefused.nameOf(file), problem), cause);
        this.file = file;
    }

    /** The file that could not be written. */
    public Path file() {
        return file;
    }

    @Override
    public String in(Wording wording) {
        return VisibleText.message(super.in(wording));
    }
}
