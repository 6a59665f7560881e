package org.epochrome.align;

/**
 * What one cause, such as the angle of the camera or the planet's size in pixels, does to the centre of a frame's disk. Frames
 * with the same cause err together, each by its own vector.
 *
 * @param kind what kind of cause it is
 * @param cause number of the cause, from 0
 * @param x by how much the disk lies right of where the limb puts it if the cause is off by one standard error, pixels
 * @param y downward
 */
public record SharedError(Kind kind, int cause, double x, double y) {

    /** Kinds of causes. */
    public enum Kind {
        /** The north angle of a camera. */
        NORTH,
        /** The planet's size on the frames of one plate scale. */
        SIZE
    }
}
