package org.epochrome.session.recipe;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.epochrome.io.file.FrameRefused;

/** Several frames were refused at once; the message has a line for each. */
public final class FramesRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public FramesRefused(List<FrameRefused> refused) {
        this(refused.stream().map(FrameRefused::getMessage));
    }

    private FramesRefused(Stream<String> sentences) {
        super(sentences.collect(Collectors.joining(System.lineSeparator())));
    }

    public static FramesRefused absent(List<AbsentFrame> frames) {
        return new FramesRefused(frames.stream().map(AbsentFrame::problem));
    }
}
