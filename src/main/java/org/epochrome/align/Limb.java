package org.epochrome.align;

/**
 * What the fit of a frame's disk says about its centre. Part of its error may have a cause that other frames share, such as
 * the angle of the camera that took them: the same error of the cause then moves each its own way.
 *
 * @param sigmaPx standard error per axis, apart from what is shared; infinite where the limb shall not count, 0 where the
 *     centre is known and stays
 * @param cause number of the shared cause, from 0; limbs of one number share it
 * @param sharedX by how much the disk lies right of where the limb puts it if the cause is off by one standard error, pixels
 * @param sharedY the same downward
 */
public record Limb(double sigmaPx, int cause, double sharedX, double sharedY) {
    /** A limb whose error has nothing to do with others'. */
    public static Limb alone(double sigmaPx) {
        return new Limb(sigmaPx, 0, 0, 0);
    }
}
