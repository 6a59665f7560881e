package org.epochrome.session.recipe;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.disk.AirFlattening;
import org.epochrome.disk.Globe;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.Band;
import org.epochrome.image.Encoding;
import org.epochrome.image.Plane;
import org.epochrome.image.defect.FrameDefects;
import org.epochrome.io.read.DatedFrame;

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
    public String name() {
        return frame.head().file().getFileName().toString();
    }

    /** Whether its samples are assumed linear because neither the file nor the user gives an encoding. */
    public boolean countsAsLinear() {
        return frame.encoding().isLinear()
                && frame.givenEncoding().isEmpty()
                && frame.head().tagged().isEmpty();
    }

    /** Plate scale that its header gives, arcsec per pixel; an expectation, not a fact. */
    public OptionalDouble headerScaleArcsecPerPx() {
        return frame.head().geometry().scaleArcsecPerPx();
    }

    /** North angle of the body by its header's celestial north and the position angle of the pole, degrees. */
    public OptionalDouble headerNorthDeg() {
        return frame.head().geometry().northAngleDeg(aspect.poleAngleDeg());
    }

    /** Whether it is mirrored by its header. */
    public Optional<Boolean> headerMirrored() {
        return frame.head().geometry().mirrored();
    }

    /** Its pixels as {@link #load} gives them, and what was left out of them. */
    public FrameDefects read() {
        return linear(frame.load().planes().get(planeIndex));
    }

    /** Its pixels as linear light, parts of full scale unless the samples are floats; NaN where they are spoilt. */
    public Plane load() {
        return read().masked();
    }

    /**
     * Makes linear light of its samples, in place.
     *
     * @param samples as they were decoded
     */
    public FrameDefects linear(Plane samples) {
        toPartsOfFullScale(samples.data());
        // Sought before an encoding is undone, which would stretch the grey levels.
        FrameDefects found = FrameDefects.of(samples);
        Encoding encoding = frame.encoding();
        if (!encoding.isLinear()) {
            float[] data = found.masked().data();
            for (int i = 0; i < data.length; i++) {
                data[i] = encoding.light(data[i]);
            }
        }
        return found;
    }

    private void toPartsOfFullScale(float[] data) {
        double full = frame.head().fullScale();
        if (Double.isNaN(full)) {
            return;
        }
        float scale = (float) (1 / full);
        for (int i = 0; i < data.length; i++) {
            data[i] *= scale;
        }
    }
}
