package org.epochrome.session.combine;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.epochrome.align.Limb;
import org.epochrome.align.Shift;
import org.epochrome.align.Witness;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.merge.Coverage;
import org.epochrome.colour.merge.FineBrightness;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.blur.Smear;
import org.epochrome.moon.FoundMoon;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.register.Misalignment;
import org.epochrome.session.schedule.RotationLaw;
import org.epochrome.session.verdict.Verdict;
import org.epochrome.text.Message;

/**
 * What came out of a recipe.
 *
 * @param recipe what was asked for
 * @param epoch instant that the picture shows
 * @param aspect how the body stands then
 * @param cube the linear bands of red, green and blue, and nothing else
 * @param brightness where the finished picture's fine brightness comes from; empty for the colours themselves
 * @param globe what is seen without moons and their shadows: the bands, with that fine brightness
 * @param disk where its disk lies
 * @param frames what was found for each exposure, in the recipe's order
 * @param moons moons and shadows that were found
 * @param coverage how well each pixel is founded, by band
 * @param quality numbers that say how good it is
 * @param verdict whether it can be trusted
 * @param warnings what the user should know, a sentence each
 */
public record Combination(
        Recipe recipe,
        Instant epoch,
        Aspect aspect,
        ColourCube cube,
        Optional<FineBrightness> brightness,
        ColourCube globe,
        Disk disk,
        List<FrameResult> frames,
        List<FoundMoon> moons,
        Map<String, Coverage> coverage,
        Quality quality,
        Verdict verdict,
        List<Message> warnings) {

    /** By which laws the surface was turned, each with the names of its bands. */
    public Map<RotationLaw, List<String>> rotationLaws() {
        Map<String, RotationLaw> byName = new LinkedHashMap<>();
        Map<RotationLaw, List<String>> laws = new LinkedHashMap<>();
        frames.stream().map(f -> f.exposure().band().name()).distinct().forEach(band -> {
            RotationLaw law = RotationLaw.of(recipe, band);
            laws.computeIfAbsent(byName.computeIfAbsent(law.name(), name -> law), unused -> new ArrayList<>())
                    .add(band);
        });
        return laws;
    }

    /** The linear picture that is finished: the cube with the fine brightness. */
    public ColourCube seen() {
        return brightness.map(b -> b.laidOn(cube)).orElse(cube);
    }

    /** The combination with another picture in place of the cube, which keeps its own brightness. */
    public Combination withCube(ColourCube other) {
        return new Combination(
                recipe,
                epoch,
                aspect,
                other,
                Optional.empty(),
                globe,
                disk,
                frames,
                moons,
                coverage,
                quality,
                verdict,
                warnings);
    }

    /**
     * What was found for one exposure.
     *
     * @param exposure the plane
     * @param limb its disk as the limb alone shows it
     * @param disk its disk by limb and detail together
     * @param correction from the one to the other, pixels
     * @param witnesses what was said about its place
     * @param rotationDeg how far the globe turns from its middle to the epoch
     * @param dispersion predicted shift of its band against the middle of G, pixels; empty without a site
     * @param smear how dispersion smears its band, as the fit found it, on its pixels
     * @param weight its part in its band
     * @param warnings what the user should know about it
     */
    public record FrameResult(
            Exposure exposure,
            FittedDisk limb,
            Disk disk,
            PixelOffset correction,
            Witnesses witnesses,
            double rotationDeg,
            Optional<PixelOffset> dispersion,
            Smear smear,
            double weight,
            List<Message> warnings) {}

    /**
     * What limb, detail and physics say about the place of an exposure, on the output's pixels.
     *
     * @param limb how sure the limb is of where it lies
     * @param detail where the detail lies beyond the limb, against the reference's
     * @param physics where predicted dispersion puts the plane beyond the limb, against green of the same frame
     * @param place where it comes to lie on the reference, with the standard errors of all measurements together
     * @param leftOut who contradicted the others and was not heard
     * @param nudge by how much the picture was moved by hand
     */
    public record Witnesses(
            Limb limb, Shift detail, Shift physics, Shift place, Set<Witness> leftOut, PixelOffset nudge) {

        /** Standard error of where the limb puts the exposure, right and down, whatever its cause. */
        public Shift limbError() {
            return new Shift(0, 0, limb.sigmaX(), limb.sigmaY(), limb.covariance());
        }

        /** The larger of the standard errors of its place on the reference, right and down. */
        public double placeSigmaPx() {
            return Math.max(place.sigmaX(), place.sigmaY());
        }

        /** How far detail and limb lie apart in standard errors; NaN if there is no detail. */
        public double limbToDetail() {
            return apart(detail);
        }

        /** How far predicted dispersion and limb lie apart in standard errors; NaN if no dispersion is predicted. */
        public double limbToPhysics() {
            return apart(physics);
        }

        private double apart(Shift s) {
            Shift error = limbError();
            return s.known()
                    ? Math.hypot(
                            s.x() / Math.hypot(error.sigmaX(), s.sigmaX()),
                            s.y() / Math.hypot(error.sigmaY(), s.sigmaY()))
                    : Double.NaN;
        }
    }

    /**
     * How well the colours are aligned: in a simple stack, whose frames are aligned by the centroids of their light and
     * not turned, and in the result.
     *
     * @param before in the simple stack
     * @param after in the result
     */
    public record Quality(Misalignment before, Misalignment after) {
        /** In a word or a few: aligned, misaligned, worse than a simple stack, or unknown. */
        public String alignment() {
            if (after.exceeds(before)) {
                return "worse than a simple stack";
            }
            return !after.known() ? "unknown" : after.shows() ? "misaligned" : "aligned";
        }
    }
}
