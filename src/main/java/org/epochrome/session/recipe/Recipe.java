package org.epochrome.session.recipe;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.read.DatedFrame;

/**
 * Everything that decides what the linear colour picture looks like. The same recipe gives the same picture, bit for bit.
 *
 * @param frames what it is made from
 * @param body the planet
 * @param place where the telescope stood
 * @param epoch instant of the result; empty for midway between the earliest and the latest middle
 * @param setup how the camera looked at the sky
 * @param corrections what is corrected in the frames
 * @param alignment how frames are aligned
 * @param assignment which bands make the picture
 */
public record Recipe(
        Frames frames,
        @Choice Body body,
        @Choice Place place,
        @Choice Optional<Instant> epoch,
        @Choice Setup setup,
        @Choice Corrections corrections,
        @Choice Alignment alignment,
        @Choice Assignment assignment)
        implements Choices<Recipe> {

    /** The recipe with defaults for everything else. */
    public static Recipe usual(List<DatedFrame> frames, Body body) {
        return new Recipe(
                Frames.of(frames),
                body,
                Place.UNKNOWN,
                Optional.empty(),
                Setup.UNKNOWN,
                Corrections.usual(body),
                Alignment.USUAL,
                Assignment.usual(frames));
    }

    /** This recipe for another planet, with the corrections usual for it. */
    public Recipe of(Body other) {
        return with(Recipe::body, other).with(Corrections.usual(other));
    }

    /** This recipe with other frames. */
    public Recipe with(Frames other) {
        return with(Recipe::frames, other);
    }

    /** This recipe with another site or air. */
    public Recipe with(Place other) {
        return with(Recipe::place, other);
    }

    /** This recipe with another epoch; empty for the middle of the session. */
    public Recipe at(Optional<Instant> other) {
        return with(Recipe::epoch, other);
    }

    /** This recipe with another setup of camera and mount. */
    public Recipe with(Setup other) {
        return with(Recipe::setup, other);
    }

    /** This recipe with other corrections. */
    public Recipe with(Corrections other) {
        return with(Recipe::corrections, other);
    }

    /** This recipe with another way of aligning the frames. */
    public Recipe with(Alignment other) {
        return with(Recipe::alignment, other);
    }

    /** This recipe with other bands as red, green, blue and luminance. */
    public Recipe with(Assignment other) {
        return with(Recipe::assignment, other);
    }
}
