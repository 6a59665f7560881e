package org.epochrome.session.combine;

import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.compare.FrameLight;
import org.epochrome.session.recipe.Exposure;

/** Frames with as much of their smear taken off as a recipe wants. */
public final class DispersionRemoval {
    private DispersionRemoval() {}

    public static Plane of(
            Plane plane, FittedDisk fit, Exposure exposure, DispersionDeconvolution.Extent extent, Progress progress) {
        if (!DispersionDeconvolution.changes(fit.shading(), extent)) {
            return plane;
        }
        FrameLight light = FrameLight.of(plane, fit);
        return DispersionDeconvolution.of(
                plane, fit, exposure.globe(), light.noise() * light.level(), extent, progress);
    }
}
