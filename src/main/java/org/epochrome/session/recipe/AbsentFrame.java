package org.epochrome.session.recipe;

import java.util.Optional;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.text.Message;

/**
 * A frame of a session file that cannot be used any more, as when it was moved away.
 *
 * @param request its former path, and the user's settings for it
 * @param mark what it was when the session was saved, if that is known
 * @param problem why it cannot be used, one sentence that begins with its name
 */
public record AbsentFrame(FrameRequest request, Optional<FileMark> mark, Message problem) {
    /** Name of its file. */
    public String name() {
        return request.file().getFileName().toString();
    }
}
