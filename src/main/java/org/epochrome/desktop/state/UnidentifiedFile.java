package org.epochrome.desktop.state;

import java.nio.file.Path;
import org.epochrome.io.file.VisibleText;

/**
 * A file that was added but whose band or times are not known; the user is asked for them.
 *
 * @param file the frame
 * @param problem what is missing, one sentence in the words of the page Frame
 */
public record UnidentifiedFile(Path file, String problem) {
    public String name() {
        return VisibleText.of(file.getFileName().toString());
    }
}
