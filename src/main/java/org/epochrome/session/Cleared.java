package org.epochrome.session;

import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Unsmear;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;

/** Frames with as much of their smear taken off as a recipe wants. */
final class Cleared {
    private Cleared() {}

    static Plane of(Plane plane, FittedDisk fit, Exposure exposure, Unsmear.Extent extent, Progress progress) {
        if (!Unsmear.changes(fit.shading(), extent)) {
            return plane;
        }
        FrameLight light = FrameLight.of(plane, fit);
        return Unsmear.of(plane, fit, exposure.globe(), light.noise() * light.level(), extent, progress);
    }
}
