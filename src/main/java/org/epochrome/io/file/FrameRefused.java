package org.epochrome.io.file;

import java.nio.file.Path;
import org.epochrome.text.Message;
import org.epochrome.text.Refusal;
import org.epochrome.text.Wording;

/** An input that cannot be used. The message is one sentence for the user that begins with the name of the file. */
public final class FrameRefused extends Refusal {
    private static final long serialVersionUID = 1L;
    private final transient Path file;

    /**
     * Refuses a file.
     *
     * @param problem what is wrong and what to do, as the rest of a sentence that began with the name of the file
     */
    public FrameRefused(Path file, Message problem) {
        this(file, problem, null);
    }

    /** Refuses a file because of a failure underneath. */
    public FrameRefused(Path file, Message problem, Throwable cause) {
        super(Message.of("file.refused", nameOf(file), problem), cause);
        this.file = file;
    }

    /** The file that was refused. */
    public Path file() {
        return file;
    }

    @Override
    public String in(Wording wording) {
        return VisibleText.message(super.in(wording));
    }

    public static String nameOf(Path file) {
        Path name = file.getFileName();
        return name == null ? file.toString() : name.toString();
    }
}
