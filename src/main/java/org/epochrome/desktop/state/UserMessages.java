package org.epochrome.desktop.state;

import java.util.concurrent.CompletionException;
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
            return "Something went wrong inside the program (" + cause + "); please report what you did.";
        }
        String message = inWords(cause.getMessage());
        return (cause instanceof SessionRefused ? Character.toUpperCase(message.charAt(0)) : message.charAt(0))
                + message.substring(1)
                + (message.endsWith(".") ? "" : ".");
    }

    public static Throwable unwrapped(Throwable thrown) {
        return thrown instanceof CompletionException && thrown.getCause() != null ? thrown.getCause() : thrown;
    }

    /** Options of the command line by the names that the window has for them. */
    public static String inWords(String message) {
        return message.replace("--north DEG", "North on the page Session")
                .replace("--body", "the choice of the planet")
                .replace("--red, --green, --blue, --luminance or in a --sheet", "choosing it on the page Frame")
                .replace("--red, --green, --blue or in a --sheet", "choosing it on the page Frame")
                .replace("--red, --green, --blue or a --sheet", "choosing it on the page Frame")
                .replace("--red, --green or --blue", "choosing its band on the page Frame")
                .replace("give its times in a --sheet", "type its times on the page Frame")
                .replace("in a --sheet", "on the page Frame")
                .replace("--exposure tells the length", "start and end on the page Frame tell the length")
                .replace("say --mirrored yes", "say so on the page Session")
                .replace("say --mirrored no", "say so on the page Session")
                .replace("say it by --mirrored", "say it on the page Session")
                .replace("Without --site", "Without a site (page Session)")
                .replace("give it by --site LAT,LON", "choose the site on the page Session")
                .replace("give --north", "set north on the page Session to")
                .replace("--north", "North on the page Session")
                .replace("Say --mount altaz", "Choose the alt-azimuth mount on the page Session")
                .replace("--assign or --luminance-from takes", "the page Colour takes")
                .replace("put it back, or leave it out (--leave-out)", "drop it in here, or forget it")
                .replace(" or add --overwrite", "");
    }
}
