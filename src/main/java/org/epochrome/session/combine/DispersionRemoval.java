package org.epochrome.session.combine;

import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.compare.FrameLight;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/** Frames with as much of their smear taken off as a recipe wants. */
public final class DispersionRemoval {
    private DispersionRemoval() {}

    /** The frames with that smear taken off, and with disks that know it. */
    public static WorkingFrames of(WorkingFrames frames, Extent extent, Memory memory, Progress progress) {
        if (frames.disks().stream().noneMatch(f -> DispersionDeconvolution.changes(f.shading(), extent))) {
            return frames;
        }
        progress.doing(Message.text("progress.deblurring"));
        return frames.remade(i -> cleared(frames.get(i), extent, progress), memory, progress)
                .map(f -> f.at(DispersionDeconvolution.fit(f.disk(), extent)));
    }

    private static Plane cleared(WorkingFrame frame, Extent extent, Progress progress) {
        Plane plane = frame.pixels();
        FittedDisk fit = frame.disk();
        if (!DispersionDeconvolution.changes(fit.shading(), extent)) {
            return plane;
        }
        FrameLight light = FrameLight.of(plane, fit);
        return DispersionDeconvolution.of(
                plane, fit, frame.exposure().globe(), light.noise() * light.level(), extent, progress);
    }
}
