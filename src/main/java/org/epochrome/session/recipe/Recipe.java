package org.epochrome.session.recipe;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
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
        Body body,
        Place place,
        Optional<Instant> epoch,
        Setup setup,
        Corrections corrections,
        Alignment alignment,
        Assignment assignment) {

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
        return new Recipe(frames, other, place, epoch, setup, Corrections.usual(other), alignment, assignment);
    }

    /** This recipe with other frames. */
    public Recipe with(Frames other) {
        return new Recipe(other, body, place, epoch, setup, corrections, alignment, assignment);
    }

    /** This recipe with another site or air. */
    public Recipe with(Place other) {
        return new Recipe(frames, body, other, epoch, setup, corrections, alignment, assignment);
    }

    /** This recipe with another epoch; empty for the middle of the session. */
    public Recipe at(Optional<Instant> other) {
        return new Recipe(frames, body, place, other, setup, corrections, alignment, assignment);
    }

    /** This recipe with another setup of camera and mount. */
    public Recipe with(Setup other) {
        return new Recipe(frames, body, place, epoch, other, corrections, alignment, assignment);
    }

    /** This recipe with other corrections. */
    public Recipe with(Corrections other) {
        return new Recipe(frames, body, place, epoch, setup, other, alignment, assignment);
    }

    /** This recipe with another way of aligning the frames. */
    public Recipe with(Alignment other) {
        return new Recipe(frames, body, place, epoch, setup, corrections, other, assignment);
    }

    /** This recipe with other bands as red, green, blue and luminance. */
    public Recipe with(Assignment other) {
        return new Recipe(frames, body, place, epoch, setup, corrections, alignment, other);
    }
}
