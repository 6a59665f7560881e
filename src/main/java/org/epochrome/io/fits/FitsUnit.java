package org.epochrome.io.fits;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/** One header with its data, of which a FITS file is a row (FITS Standard 4.0, section 3.1). */
public sealed interface FitsUnit permits FitsImage, FitsTable {
    /** EXTNAME; empty for none. */
    String name();

    /** Keywords after the mandatory ones, in this order. */
    List<FitsCard> cards();

    /** What was done to the data, a line each. */
    List<String> history();

    /**
     * The mandatory keywords.
     *
     * @param first whether it is the first unit of its file
     */
    List<FitsCard> structure(boolean first);

    /** Writes the data, without the padding at the end. */
    void writeData(OutputStream out) throws IOException;
}
