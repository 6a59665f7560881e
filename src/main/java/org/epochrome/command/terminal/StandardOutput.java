package org.epochrome.command.terminal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where standard output leads. */
public enum StandardOutput {
    /** To another program, by a pipe or a socket: it can be written as long as that program reads. */
    PIPE,
    /** To a file or a device, which may be full; also if the system does not show which. */
    FILE;

    private static final int TYPE = 0170000;
    private static final int FIFO = 0010000;
    private static final int SOCKET = 0140000;

    /**
     * Where this program's standard output leads. Asked of the file system, since Java keeps the reason why printing failed to
     * itself, and systems report it in the user's language.
     */
    public static StandardOutput kind() {
        try {
            int mode = (Integer) Files.getAttribute(Path.of("/dev/stdout"), "unix:mode");
            return (mode & TYPE) == FIFO || (mode & TYPE) == SOCKET ? PIPE : FILE;
        } catch (IOException | UnsupportedOperationException e) {
            return FILE;
        }
    }
}
