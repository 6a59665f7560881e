package org.epochrome.desktop.view;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Asks for files. An interface, because the system's own choosers cannot be driven without a display. */
public interface FileChoosers {
    /** Where files are proposed to be saved until the user has chosen another folder. */
    default void startIn(Path folder) {}

    /** Shows a file in the system's file manager. */
    default void reveal(Path file) {}

    /** Frames, sheets or a session to open. */
    List<Path> open();

    /**
     * A file to write; that an existing one may be replaced has been asked.
     *
     * @param title of the question
     * @param name proposed
     * @param suffixes what it may end in, the first if nothing is typed
     */
    Optional<Path> save(String title, String name, List<String> suffixes);
}
