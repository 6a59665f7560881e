package org.epochrome.desktop.state;

import java.nio.file.Path;

/**
 * A file that was dropped in but does not tell its band or its times: to be asked for beside it.
 *
 * @param file the frame
 * @param problem what is missing, one sentence
 */
public record UnidentifiedFile(Path file, String problem) {
    public String name() {
        return file.getFileName().toString();
    }
}
