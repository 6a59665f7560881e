package org.epochrome.session.register;

import java.util.List;
import org.epochrome.session.register.Registration.Registered;
import org.epochrome.session.schedule.WorkingFrames;

/**
 * Frames with their disks where all measurements together put them, and what these were.
 *
 * @param frames the frames
 * @param measured one for each frame
 */
public record RegisteredFrames(WorkingFrames frames, List<Registered> measured) {
    public RegisteredFrames {
        measured = List.copyOf(measured);
    }
}
