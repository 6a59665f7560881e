package org.epochrome.align;

import java.util.List;

/**
 * What the fit of a frame's disk says about its centre. Part of its error may have causes that other frames share: the same
 * error of a cause then moves each its own way.
 *
 * @param sigmaPx standard error per axis, apart from what is shared; infinite where the limb shall not count, 0 where the
 *     centre is known and stays
 * @param ownX by how much detail lies right of where the limb puts it for a cause that no other frame shares, such as the time of
 *     the recording, if that is off by one standard error, pixels
 * @param ownY the same downward
 * @param shared what causes that other frames share do to it
 * @param misfits whether the model of the disk left more than noise around the limb, so that its error may be larger than stated
 */
public record Limb(double sigmaPx, double ownX, double ownY, List<SharedError> shared, boolean misfits) {
    public Limb {
        shared = List.copyOf(shared);
    }

    /** Standard error to the right, whatever its cause. */
    public double sigmaX() {
        return Math.hypot(
                Math.hypot(sigmaPx, ownX),
                Math.sqrt(shared.stream().mapToDouble(s -> s.x() * s.x()).sum()));
    }

    /** Standard error downward, whatever its cause. */
    public double sigmaY() {
        return Math.hypot(
                Math.hypot(sigmaPx, ownY),
                Math.sqrt(shared.stream().mapToDouble(s -> s.y() * s.y()).sum()));
    }

    /** Covariance of its errors to the right and downward, square pixels. */
    public double covariance() {
        return ownX * ownY + shared.stream().mapToDouble(s -> s.x() * s.y()).sum();
    }

    /** A limb whose error has nothing to do with others'. */
    public static Limb alone(double sigmaPx) {
        return new Limb(sigmaPx, 0, 0, List.of(), false);
    }
}
