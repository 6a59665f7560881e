package org.epochrome.session;

import java.time.Instant;
import org.epochrome.disk.AirFlattening;
import org.epochrome.disk.Globe;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.io.DatedFrame;

/**
 * One plane of a frame: a mono frame has one, a one-shot-colour frame three of the same time.
 *
 * @param frame the file it comes from
 * @param planeIndex which of the frame's planes
 * @param band light it was taken in
 * @param aspect how the body stood at the middle of the recording
 * @param air how refraction flattened its image then
 */
public record Exposure(DatedFrame frame, int planeIndex, Band band, Aspect aspect, AirFlattening air) {
    /** The body as it stood at the middle of the recording, seen through the air. */
    public Globe globe() {
        return Globe.of(aspect).through(air);
    }

    public Instant mid() {
        return frame.timing().span().mid();
    }

    /** Name of its file. */
    String name() {
        return frame.head().file().getFileName().toString();
    }

    /** Its pixels as parts of full scale, or as they are if the samples are floats. */
    public Plane load() {
        Plane plane = frame.load().planes().get(planeIndex);
        double full = frame.head().fullScale();
        if (Double.isNaN(full)) {
            return plane;
        }
        float[] data = plane.data();
        float scale = (float) (1 / full);
        for (int i = 0; i < data.length; i++) {
            data[i] *= scale;
        }
        return plane;
    }
}
