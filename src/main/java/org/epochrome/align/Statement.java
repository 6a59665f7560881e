package org.epochrome.align;

import java.util.ArrayList;
import java.util.List;

/**
 * A shift that should equal a sum of unknowns.
 *
 * @param limb the frame whose limb says so; -1 for a link
 * @param misfits whether that limb does not resemble its model
 * @param terms the unknowns' numbers
 * @param right factors of the unknowns in the shift's x
 * @param down the same in y
 */
record Statement(
        int limb,
        boolean misfits,
        Shift shift,
        Witness witness,
        List<Integer> terms,
        List<Double> right,
        List<Double> down) {
    /** Standard error below which detail is well measured: bands that have little in common are not compared so well. */
    private static final double WELL_MEASURED_PX = 0.1;
    /** A frame whose limb does not count is held where it is, but only just. */
    static final double UNHEARD_PX = 1e3;
    /** Standard error that stands for none. */
    private static final double HELD_PX = 1e-6;

    static Statement of(Limb limb, int frame, int frames) {
        double sigma = Math.max(HELD_PX, Math.min(UNHEARD_PX, limb.sigmaPx()));
        List<Integer> terms = new ArrayList<>(List.of(2 * frame, 2 * frame + 1));
        List<Double> right = new ArrayList<>(List.of(1.0, 0.0));
        List<Double> down = new ArrayList<>(List.of(0.0, 1.0));
        for (SharedError shared : limb.shared()) {
            terms.add(2 * frames + shared.cause());
            right.add(-shared.x());
            down.add(-shared.y());
        }
        return new Statement(
                frame,
                limb.misfits(),
                new Shift(
                        0,
                        0,
                        Math.hypot(sigma, limb.ownX()),
                        Math.hypot(sigma, limb.ownY()),
                        limb.ownX() * limb.ownY()),
                Witness.LIMB,
                terms,
                right,
                down);
    }

    static Statement of(Link link) {
        return new Statement(
                -1,
                false,
                link.shift(),
                link.witness(),
                List.of(2 * link.to(), 2 * link.to() + 1, 2 * link.from(), 2 * link.from() + 1),
                List.of(1.0, 0.0, -1.0, 0.0),
                List.of(0.0, 1.0, 0.0, -1.0));
    }

    Statement widened(double factor) {
        Shift wider = new Shift(
                shift.x(),
                shift.y(),
                factor * shift.sigmaX(),
                factor * shift.sigmaY(),
                factor * factor * shift.covariance());
        return new Statement(limb, misfits, wider, witness, terms, right, down);
    }

    List<Double> factors(int axis) {
        return axis == 0 ? right : down;
    }

    /** Covariance, no standard error less than a bound unless the centre is held. */
    double[] covariance(double least) {
        double bound = held() ? 0 : least;
        double sx = Math.max(bound, shift.sigmaX());
        double sy = Math.max(bound, shift.sigmaY());
        return new double[] {sx * sx, shift.covariance(), sy * sy};
    }

    /** Whether this is detail, well measured, of the frame of another statement. */
    boolean outvotes(Statement limb) {
        return witness == Witness.DETAIL
                && Math.max(shift.sigmaX(), shift.sigmaY()) < WELL_MEASURED_PX
                && terms.contains(2 * limb.limb);
    }

    boolean held() {
        return limb >= 0 && shift.sigmaX() <= HELD_PX;
    }
}
