package org.epochrome.session.recipe;

import org.epochrome.text.Message;
import org.epochrome.text.Refusal;

/** What was asked for cannot be done; the message is a clause that says why and what to do. */
public final class SessionRefused extends Refusal {
    private static final long serialVersionUID = 1L;

    public SessionRefused(Message reason) {
        super(reason, null);
    }
}
