package org.epochrome.session;

import java.util.List;
import java.util.stream.Collectors;
import org.epochrome.io.FrameRefused;

/** Several frames were refused at once; the message has a line for each. */
public final class FramesRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public FramesRefused(List<FrameRefused> refused) {
        super(refused.stream().map(FrameRefused::getMessage).collect(Collectors.joining(System.lineSeparator())));
    }
}
