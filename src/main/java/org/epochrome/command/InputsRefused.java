package org.epochrome.command;

/** The inputs do not go together; the message is one sentence. */
final class InputsRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    InputsRefused(String sentence) {
        super(sentence);
    }
}
