package org.epochrome.desktop;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.epochrome.command.Main;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.sessionfile.SessionFile;

/**
 * Where the program starts: a command goes to the command line; none, {@code desktop}, or a session file alone, as when it was
 * double-clicked, opens the window.
 */
public final class Launcher {
    private static final int NO_DISPLAY = 1;
    /** JavaFX remarks on every start that it does not run from modules. Held, or the level would be forgotten. */
    private static final Logger TOOLKIT = Logger.getLogger("javafx");

    private Launcher() {}

    public static void main(String[] args) {
        if (args.length == 0 || args[0].equals("desktop") || isSession(args)) {
            openDesktop(args);
        } else {
            Main.main(args);
        }
    }

    private static boolean isSession(String[] args) {
        return args.length == 1 && args[0].endsWith(SessionFile.SUFFIX) && Files.isRegularFile(Path.of(args[0]));
    }

    private static void openDesktop(String[] args) {
        TOOLKIT.setLevel(Level.SEVERE);
        if (!Files.isWritable(Path.of(System.getProperty("user.home")))) {
            unpackElsewhere();
        }
        try {
            Desktop.open(args);
        } catch (UnsupportedOperationException | UnsatisfiedLinkError | NoClassDefFoundError e) {
            System.err.println(Texts.of("window.noDisplay", e.getMessage()));
            System.exit(NO_DISPLAY);
        }
    }

    /** The toolkit unpacks its libraries at home otherwise, and complains if it cannot. The folder is the user's alone. */
    private static void unpackElsewhere() {
        try {
            System.setProperty(
                    "javafx.cachedir", Files.createTempDirectory("epochrome").toString());
        } catch (IOException e) {
            // Without any folder to write to the toolkit says what it lacks.
        }
    }
}
