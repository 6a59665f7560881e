package org.epochrome.io.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.epochrome.text.Message;

/** The folder that a new file goes to; it is made if it is not there yet. */
public final class OutputFolder {
    private static final Message NO_FOLDER = Message.of("output.folderNotMade");

    private OutputFolder() {}

    /**
     * Refuses a file that could not be written; a folder that is not there yet will be made.
     *
     * @throws OutputRefused if it exists and may not be replaced, or its folder cannot take it
     */
    public static void checkFree(Path file, boolean overwrite) {
        Path folder = file.toAbsolutePath().getParent();
        if (Files.isDirectory(folder)) {
            AtomicFile.check(file, overwrite);
            return;
        }
        Path above = folder;
        while (Files.notExists(above)) {
            above = above.getParent();
        }
        if (!Files.isDirectory(above) || !Files.isWritable(above)) {
            throw new OutputRefused(file, NO_FOLDER);
        }
    }

    /**
     * Makes the folder of a file.
     *
     * @throws OutputRefused if it cannot be made
     */
    public static void make(Path file) {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
        } catch (IOException e) {
            throw new OutputRefused(file, NO_FOLDER, e);
        }
    }
}
