package org.epochrome.job;

/** Thrown by {@link Progress#check()} once the user has asked the work to stop. */
public final class CancelledException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public CancelledException() {
        super("The work was cancelled.");
    }
}
