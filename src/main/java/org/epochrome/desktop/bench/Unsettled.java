package org.epochrome.desktop.bench;

import java.nio.file.Path;

/**
 * A file that was dropped in but does not tell its band or its times: to be asked for beside it.
 *
 * @param file the frame
 * @param problem what is missing, one sentence
 */
public record Unsettled(Path file, String problem) {
    public String name() {
        return file.getFileName().toString();
    }
}
