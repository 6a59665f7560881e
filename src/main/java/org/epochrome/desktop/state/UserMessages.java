package org.epochrome.desktop.state;

import java.util.concurrent.CompletionException;
import org.epochrome.desktop.style.Texts;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.session.locate.NoDiskInFrame;
import org.epochrome.session.recipe.FramesRefused;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.schedule.Memory;

/** Messages for people: what went wrong and what to do. */
public final class UserMessages {
    private UserMessages() {}

    public static String of(Throwable thrown) {
        Throwable cause = unwrapped(thrown);
        boolean told = cause instanceof FrameRefused
                || cause instanceof FramesRefused
                || cause instanceof NoDiskInFrame
                || cause instanceof OutputRefused
                || cause instanceof SessionRefused
                || cause instanceof IllegalArgumentException;
        if (cause instanceof OutOfMemoryError) {
            return Memory.exceeded();
        }
        if (!told || cause.getMessage() == null) {
            return Texts.of("message.internal", cause);
        }
        String message = inWords(cause.getMessage());
        return (cause instanceof SessionRefused ? Character.toUpperCase(message.charAt(0)) : message.charAt(0))
                + message.substring(1)
                + (message.endsWith(".") ? "" : ".");
    }

    public static Throwable unwrapped(Throwable thrown) {
        return thrown instanceof CompletionException && thrown.getCause() != null ? thrown.getCause() : thrown;
    }

    /** A message of the engine, with the controls of the window in place of options of the command line. */
    public static String inWords(String message) {
        return OptionWording.replaced(message);
    }

    /** A message that stands on the page Frame, which need not be named there. */
    public static String onPageFrame(String message) {
        return message.replace(Texts.of("message.onFrame"), Texts.of("message.here"))
                .replace(Texts.of("message.inFrame"), "");
    }
}
