package org.epochrome.session.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.text.Message;

/**
 * An exposure on its way through the stages of a session.
 *
 * @param exposure what was recorded
 * @param source gives its pixels as far as they are cleaned; they may be read or made again each time
 * @param disk where its disk lies, as far as that is known
 * @param notes what was left out of its pixels, a sentence each
 */
public record WorkingFrame(Exposure exposure, Supplier<Plane> source, FittedDisk disk, List<Message> notes) {
    public WorkingFrame {
        notes = List.copyOf(notes);
    }

    /** Its pixels. Callers may change none. */
    public Plane pixels() {
        return source.get();
    }

    public String band() {
        return exposure.band().name();
    }

    /** This frame with its disk elsewhere. */
    public WorkingFrame at(FittedDisk other) {
        return new WorkingFrame(exposure, source, other, notes);
    }

    /** This frame with other pixels. */
    public WorkingFrame with(Supplier<Plane> other) {
        return new WorkingFrame(exposure, other, disk, notes);
    }

    /** This frame with another note. */
    public WorkingFrame noting(Message note) {
        List<Message> all = new ArrayList<>(notes);
        all.add(note);
        return new WorkingFrame(exposure, source, disk, all);
    }
}
