package org.epochrome.session;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.epochrome.align.Limb;
import org.epochrome.align.SharedError;
import org.epochrome.align.Shift;
import org.epochrome.align.Witness;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.combine.Combination.Witnesses;

/**
 * How sure a result says its frames' places are against the reference's: its witnesses' standard errors put together by least
 * squares, over the covariance of all limbs' errors at once. The scenes are photographed at the very middle of their recordings, so
 * what a result adds for recordings that are better at one end than at the other is left out. Shares no code with the engine.
 */
final class StatedError {
    private static final double UNHEARD_PX = 1e3;

    private StatedError() {}

    /** Standard errors of a frame's place against the reference's, right and down, output pixels. */
    static double[] px(List<FrameResult> frames, int reference, int frame) {
        RealMatrix known = new LUDecomposition(limbs(frames)).getSolver().getInverse();
        for (int i = 0; i < frames.size(); i++) {
            Witnesses w = frames.get(i).witnesses();
            if (i != reference && !w.leftOut().contains(Witness.DETAIL)) {
                link(w.detail(), reference, i, known);
            }
            if (i != reference && !w.leftOut().contains(Witness.PHYSICS)) {
                link(w.physics(), reference, i, known);
            }
        }
        RealMatrix covariance = new LUDecomposition(known).getSolver().getInverse();
        double[] sigma = new double[2];
        for (int axis = 0; axis < 2; axis++) {
            int a = 2 * frame + axis;
            int b = 2 * reference + axis;
            sigma[axis] =
                    Math.sqrt(covariance.getEntry(a, a) + covariance.getEntry(b, b) - 2 * covariance.getEntry(a, b));
        }
        return sigma;
    }

    /** Covariance of the limbs' errors; of those that share a cause they go together. */
    private static RealMatrix limbs(List<FrameResult> frames) {
        RealMatrix errors = new Array2DRowRealMatrix(2 * frames.size(), 2 * frames.size());
        for (int i = 0; i < frames.size(); i++) {
            Witnesses w = frames.get(i).witnesses();
            double own =
                    w.leftOut().contains(Witness.LIMB) ? UNHEARD_PX : w.limb().sigmaPx();
            for (int axis = 0; axis < 2; axis++) {
                errors.addToEntry(2 * i + axis, 2 * i + axis, own * own);
                for (int k = 0; k < 2 * frames.size(); k++) {
                    Limb other = frames.get(k / 2).witnesses().limb();
                    for (SharedError cause : w.limb().shared()) {
                        for (SharedError same : other.shared()) {
                            if (same.cause() == cause.cause()) {
                                errors.addToEntry(2 * i + axis, k, along(cause, axis) * along(same, k % 2));
                            }
                        }
                    }
                }
            }
        }
        return errors;
    }

    private static double along(SharedError error, int axis) {
        return axis == 0 ? error.x() : error.y();
    }

    private static void link(Shift s, int from, int to, RealMatrix known) {
        if (!s.known()) {
            return;
        }
        RealMatrix error = new Array2DRowRealMatrix(
                new double[][] {{s.sigmaX() * s.sigmaX(), s.covariance()}, {s.covariance(), s.sigmaY() * s.sigmaY()}});
        RealMatrix weight = new LUDecomposition(error).getSolver().getInverse();
        for (int p = 0; p < 2; p++) {
            for (int q = 0; q < 2; q++) {
                double w = weight.getEntry(p, q);
                known.addToEntry(2 * to + p, 2 * to + q, w);
                known.addToEntry(2 * from + p, 2 * from + q, w);
                known.addToEntry(2 * from + p, 2 * to + q, -w);
                known.addToEntry(2 * to + p, 2 * from + q, -w);
            }
        }
    }
}
