package org.epochrome.session.recipe;

/** What is known about reflections in the frames. */
public enum Mirroring {
    /** An odd number of reflections: east is right when sky north is up. */
    YES,
    /** None, or an even number. */
    NO,
    /** To be found from the direction in which detail moves, if the north angle is given; otherwise assumed to be none. */
    AUTO
}
