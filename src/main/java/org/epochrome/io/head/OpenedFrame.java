package org.epochrome.io.head;

import java.io.IOException;
import java.util.List;
import org.epochrome.image.Plane;

/** A file whose header has been understood and whose pixels can be decoded. Holds no open resource. */
public interface OpenedFrame {
    FrameHead head();

    /** Decodes the pixels, {@code planeCount} planes in displayed orientation; infinite values may remain. */
    List<Plane> planes() throws IOException;
}
