package org.epochrome.text;

/** Something cannot be done, for a reason that the user can understand and remove. */
public abstract class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Message message;

    /** @param cause the failure underneath, or null */
    protected Refusal(Message message, Throwable cause) {
        super(null, cause);
        this.message = message;
    }

    /** The reason; of several the first. */
    public Message message() {
        return message;
    }

    /** The reason in the words of where it is shown. */
    public String in(Wording wording) {
        return message.in(wording);
    }

    /** The reason in the words of the command line. */
    @Override
    public String getMessage() {
        return in(Wording.COMMAND_LINE);
    }
}
