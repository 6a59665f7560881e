package org.epochrome.session.schedule;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.epochrome.image.Plane;
import org.epochrome.image.defect.FrameDefects;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.text.Message;

/** Reads the exposures of a session. A file with several planes is decoded once for all of them. */
public final class ExposureReader {
    private final Schedule schedule;
    private final AtomicReferenceArray<List<Message>> notes;
    private final Map<DatedFrame, Decoded> files = Collections.synchronizedMap(new IdentityHashMap<>());

    public ExposureReader(Schedule schedule) {
        this.schedule = schedule;
        notes = new AtomicReferenceArray<>(schedule.exposures().size());
    }

    /**
     * The pixels of an exposure, linear; NaN where they are spoilt.
     *
     * @throws org.epochrome.io.file.FrameRefused if its file cannot be read
     */
    public Plane read(int index) {
        Exposure exposure = schedule.exposures().get(index);
        Plane plane = files.computeIfAbsent(exposure.frame(), Decoded::new).take(exposure.planeIndex());
        FrameDefects found = exposure.linear(plane);
        notes.set(index, found.notes());
        return found.masked();
    }

    /** What was left out of the pixels of an exposure that was read, a sentence each. */
    public List<Message> notes(int index) {
        return notes.get(index);
    }

    /** The planes of a file that were decoded and not yet asked for. Whoever asks again for want of memory has it decoded again. */
    private static final class Decoded {
        private final DatedFrame frame;
        private Plane[] waiting;

        Decoded(DatedFrame frame) {
            this.frame = frame;
        }

        synchronized Plane take(int index) {
            if (waiting == null) {
                waiting = frame.load().planes().toArray(Plane[]::new);
            }
            Plane plane = waiting[index];
            waiting[index] = null;
            return plane == null ? frame.load().planes().get(index) : plane;
        }
    }
}
