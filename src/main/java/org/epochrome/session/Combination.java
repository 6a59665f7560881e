package org.epochrome.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.epochrome.align.Shift;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.ephemeris.Aspect;

/**
 * What came out of a recipe.
 *
 * @param recipe what was asked for
 * @param epoch instant that the picture shows
 * @param aspect how the body stands then
 * @param cube the linear colour picture
 * @param disk where its disk lies
 * @param frames what was found for each exposure, in the recipe's order
 * @param moons moons and shadows that were found
 * @param quality numbers that say how good it is
 * @param warnings what the user should know, a sentence each
 */
public record Combination(
        Recipe recipe,
        Instant epoch,
        Aspect aspect,
        ColourCube cube,
        Disk disk,
        List<FrameResult> frames,
        List<MoonResult> moons,
        Quality quality,
        List<String> warnings) {

    /**
     * What was found for one exposure.
     *
     * @param exposure the plane
     * @param limb its disk as the limb alone shows it
     * @param disk its disk by limb and detail together
     * @param correction from the one to the other, pixels
     * @param detail shift of its detail against the reference's, before the correction
     * @param rotationDeg how far the globe turns from its middle to the epoch
     * @param dispersion predicted shift of its band against the middle of G, pixels; empty without a site
     * @param weight its part in its band
     * @param warnings what the user should know about it
     */
    public record FrameResult(
            Exposure exposure,
            FittedDisk limb,
            Disk disk,
            PixelOffset correction,
            Shift detail,
            double rotationDeg,
            Optional<PixelOffset> dispersion,
            double weight,
            List<String> warnings) {}

    /**
     * How good it is.
     *
     * @param fringeBeforePx how far colours lie apart when frames are only laid on top of each other; NaN if unknown
     * @param fringeAfterPx the same in the result
     */
    public record Quality(double fringeBeforePx, double fringeAfterPx) {}
}
