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
 * @param alignment how frames are laid on each other
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

    /** What is done if nothing more is said. */
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

    /** The same of another planet, corrected as is usual for it. */
    public Recipe of(Body other) {
        return new Recipe(frames, other, place, epoch, setup, Corrections.usual(other), alignment, assignment);
    }

    /** The same from other frames. */
    public Recipe with(Frames other) {
        return new Recipe(other, body, place, epoch, setup, corrections, alignment, assignment);
    }

    /** The same seen from elsewhere. */
    public Recipe with(Place other) {
        return new Recipe(frames, body, other, epoch, setup, corrections, alignment, assignment);
    }

    /** The same at another instant. */
    public Recipe at(Optional<Instant> other) {
        return new Recipe(frames, body, place, other, setup, corrections, alignment, assignment);
    }

    /** The same through another camera. */
    public Recipe with(Setup other) {
        return new Recipe(frames, body, place, epoch, other, corrections, alignment, assignment);
    }

    /** The same with other corrections. */
    public Recipe with(Corrections other) {
        return new Recipe(frames, body, place, epoch, setup, other, alignment, assignment);
    }

    /** The same laid on each other otherwise. */
    public Recipe with(Alignment other) {
        return new Recipe(frames, body, place, epoch, setup, corrections, other, assignment);
    }

    /** The same in other bands. */
    public Recipe with(Assignment other) {
        return new Recipe(frames, body, place, epoch, setup, corrections, alignment, other);
    }
}
