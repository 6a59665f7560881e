package org.epochrome.align;

/** The measurements of a frame's position. */
public enum Witness {
    /** The fit of the disk: where each frame's disk lies on its own. */
    LIMB,
    /** The comparison of markings: how frames lie against each other. */
    DETAIL,
    /** The predicted dispersion: how planes taken at one time lie against each other. */
    PHYSICS
}
