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
 * @param ownX by how much detail lies right of where the limb puts it for a cause that no other frame shares, such as the time of
 *     the recording, if that is off by one standard error, pixels
 * @param ownY the same downward
 * @param misfits whether the model of the disk left more than noise around the limb, so that its error may be larger than stated
 */
public record Limb(
        double sigmaPx, int cause, double sharedX, double sharedY, double ownX, double ownY, boolean misfits) {
    /** A limb that the model fits. */
    public Limb(double sigmaPx, int cause, double sharedX, double sharedY, double ownX, double ownY) {
        this(sigmaPx, cause, sharedX, sharedY, ownX, ownY, false);
    }

    /** A limb whose own error is the same in all directions. */
    public Limb(double sigmaPx, int cause, double sharedX, double sharedY) {
        this(sigmaPx, cause, sharedX, sharedY, 0, 0);
    }

    /** Standard error to the right, whatever its cause. */
    public double sigmaX() {
        return Math.hypot(sigmaPx, Math.hypot(sharedX, ownX));
    }

    /** Standard error downward, whatever its cause. */
    public double sigmaY() {
        return Math.hypot(sigmaPx, Math.hypot(sharedY, ownY));
    }

    /** This limb, with what its fit left. */
    public Limb misfitting(boolean left) {
        return new Limb(sigmaPx, cause, sharedX, sharedY, ownX, ownY, left);
    }

    /** A limb whose error has nothing to do with others'. */
    public static Limb alone(double sigmaPx) {
        return new Limb(sigmaPx, 0, 0, 0);
    }
}
