package org.epochrome.desktop.frames;

import java.util.Optional;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.combine.Combination;

/** What a combination found about a frame. */
final class FrameResults {
    private static final int GREEN = 1;

    private FrameResults() {}

    /** The result for the frame's plane, or for the green one of three; empty as long as there is none. */
    static Optional<Combination.FrameResult> of(Workspace bench, DatedFrame frame) {
        return bench.renderer().combinationProperty().get().flatMap(c -> c.frames().stream()
                .filter(r ->
                        r.exposure().frame().head().file().equals(frame.head().file()))
                .filter(r -> frame.band().band().isPresent() || r.exposure().planeIndex() == GREEN)
                .findFirst());
    }
}
