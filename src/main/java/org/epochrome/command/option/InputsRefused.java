package org.epochrome.command.option;

/** The inputs do not go together; the message is one sentence. */
public final class InputsRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    InputsRefused(String sentence) {
        super(sentence);
    }
}
