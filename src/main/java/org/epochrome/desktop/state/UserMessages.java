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
        return message.replace(
                        "give the north angle of the reference frame with --north DEG", "set North on the page Session")
                .replace("--north DEG", "North on the page Session")
                .replace("give it with --body", "choose the planet on the page Session")
                .replace("--body", "the choice of the planet")
                .replace(
                        "give it with --red, --green, --blue, --luminance or in a --sheet",
                        "choose it on the page Frame")
                .replace(
                        "give its band with --red, --green, --blue or in a --sheet",
                        "choose its band on the page Frame")
                .replace("choose one with --red, --green, --blue or a --sheet", "choose one on the page Frame")
                .replace("give it with --colour, or give its band in a --sheet", "choose its band on the page Frame")
                .replace(
                        "add one, or assign a frame with --red, --green or --blue",
                        "add one, or choose the band of a frame on the page Frame")
                .replace("give its times in a --sheet", "type its times on the page Frame")
                .replace("in a --sheet", "on the page Frame")
                .replace("give the length with --exposure", "set start and end on the page Frame")
                .replace("use --mirrored yes", "say so on the page Session")
                .replace("use --mirrored no", "say so on the page Session")
                .replace("Use --mirrored to change this", "Say on the page Session if they are")
                .replace("Without --site", "Without a site (page Session)")
                .replace("give it with --site LAT,LON", "choose the site on the page Session")
                .replace("give --north", "set north on the page Session to")
                .replace("--north", "North on the page Session")
                .replace("Use --mount altaz", "Choose the alt-azimuth mount on the page Session")
                .replace("use --assign or --luminance-from to", "use the page Colour to")
                .replace("put it back, or leave it out with --leave-out", "drop it in here, or forget it")
                .replace(" or add --overwrite", "");
    }
}
