package org.epochrome.session.product;

import java.nio.file.Path;
import org.epochrome.colour.finish.Look;
import org.epochrome.session.combine.Combination;

/** A file that is made of a combination besides its pictures. */
public interface ProductFile {
    /** Where it is written. */
    Path file();

    /**
     * Refuses before any work what could not be written after it.
     *
     * @param overwrite whether a file of this name may be replaced
     * @throws org.epochrome.io.file.OutputRefused if the file exists and may not be replaced, or its suffix does not fit
     */
    void check(boolean overwrite);

    /**
     * Writes the file.
     *
     * @param look how pictures are finished
     * @param overwrite whether a file of this name may be replaced
     * @param version of the program, for the file to name
     * @throws org.epochrome.io.file.OutputRefused if it cannot be written
     */
    void write(Combination c, Look look, boolean overwrite, String version);
}
