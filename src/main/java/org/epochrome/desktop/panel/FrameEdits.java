package org.epochrome.desktop.panel;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.style.Texts;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.ManualDisk;

/** Edits of one frame of a session. */
public final class FrameEdits {
    private FrameEdits() {}

    /** Leaves a frame out, or takes it in again. */
    public static void toggle(Workspace bench, DatedFrame frame) {
        Path file = frame.head().file();
        bench.draft().recipe().ifPresent(recipe -> {
            boolean out = recipe.frames().leftOut().contains(file);
            Set<Path> leftOut = new HashSet<>(recipe.frames().leftOut());
            if (out) {
                leftOut.remove(file);
            } else {
                leftOut.add(file);
            }
            bench.editSession(out ? Texts.of("step.includeFrame") : Texts.of("step.leaveOutFrame"), s -> {
                Frames f = s.recipe().frames();
                return s.with(s.recipe().with(f.leavingOut(leftOut)));
            });
        });
    }

    /** The session with a frame's disk held by hand, or fitted again. */
    public static Session held(Session s, DatedFrame frame, Optional<ManualDisk> disk) {
        Frames f = s.recipe().frames();
        Map<Path, ManualDisk> disks = new HashMap<>(f.disks());
        disk.ifPresentOrElse(
                d -> disks.put(frame.head().file(), d),
                () -> disks.remove(frame.head().file()));
        return s.with(s.recipe().with(f.holding(disks)));
    }
}
