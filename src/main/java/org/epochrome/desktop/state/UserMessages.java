package org.epochrome.desktop.state;

import java.util.List;
import java.util.concurrent.CompletionException;
import java.util.stream.Collectors;
import org.epochrome.desktop.style.Texts;
import org.epochrome.io.file.VisibleText;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.schedule.Memory;
import org.epochrome.text.Message;
import org.epochrome.text.Refusal;
import org.epochrome.text.Wording;

/** Messages for people: what went wrong and what to do. */
public final class UserMessages {
    private UserMessages() {}

    public static String of(Throwable thrown) {
        return of(thrown, Wording.WINDOW);
    }

    public static String of(Throwable thrown, Wording wording) {
        Throwable cause = unwrapped(thrown);
        if (cause instanceof OutOfMemoryError) {
            return Memory.exceeded();
        }
        if (cause instanceof Refusal refusal) {
            return sentence(refusal.in(wording), cause instanceof SessionRefused);
        }
        return cause instanceof IllegalArgumentException && cause.getMessage() != null
                ? sentence(cause.getMessage(), false)
                : Texts.of("message.internal", cause);
    }

    private static String sentence(String message, boolean clause) {
        return (clause ? Character.toUpperCase(message.charAt(0)) : message.charAt(0))
                + message.substring(1)
                + (message.endsWith(".") ? "" : ".");
    }

    public static Throwable unwrapped(Throwable thrown) {
        return thrown instanceof CompletionException && thrown.getCause() != null ? thrown.getCause() : thrown;
    }

    /** A message of the engine, with the controls of the window in place of options of the command line. */
    public static String inWords(Message message) {
        return VisibleText.lines(message.in(Wording.WINDOW));
    }

    /** Messages of the engine, a line each. */
    public static String lines(List<Message> messages) {
        return messages.stream().map(UserMessages::inWords).collect(Collectors.joining("\n"));
    }
}
