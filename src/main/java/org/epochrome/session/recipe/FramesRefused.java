package org.epochrome.session.recipe;

import java.util.List;
import java.util.stream.Collectors;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.file.VisibleText;
import org.epochrome.text.Message;
import org.epochrome.text.Refusal;
import org.epochrome.text.Wording;

/** Several frames were refused at once; the message has a line for each. */
public final class FramesRefused extends Refusal {
    private static final long serialVersionUID = 1L;
    private final transient List<Message> sentences;

    public FramesRefused(List<FrameRefused> refused) {
        this(refused.stream().map(FrameRefused::message).toList(), null);
    }

    private FramesRefused(List<Message> sentences, Throwable cause) {
        super(sentences.get(0), cause);
        this.sentences = sentences;
    }

    public static FramesRefused absent(List<AbsentFrame> frames) {
        return new FramesRefused(frames.stream().map(AbsentFrame::problem).toList(), null);
    }

    @Override
    public String in(Wording wording) {
        return sentences.stream()
                .map(sentence -> VisibleText.message(sentence.in(wording)))
                .collect(Collectors.joining(System.lineSeparator()));
    }
}
