package org.epochrome.session.recipe;

/** What was asked for cannot be done; the message is a clause that says why and what to do. */
public final class SessionRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public SessionRefused(String reason) {
        super(reason);
    }
}
