package org.epochrome.session;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.epochrome.align.Shift;
import org.epochrome.align.Witness;
import org.epochrome.session.Combination.FrameResult;
import org.epochrome.session.Combination.Witnesses;

/**
 * How sure a result says its frames' places are against the reference's: its witnesses' standard errors put together by least
 * squares, over the normal equations for all places at once. Shares no code with the engine.
 */
final class StatedError {
    /** What a disk's fit is never trusted beyond, as docs/method.md has it. */
    private static final double LIMB_FLOOR_PX = 0.005;

    private StatedError() {}

    /** Standard errors of a frame's place against the reference's, right and down, output pixels. */
    static double[] px(List<FrameResult> frames, int reference, int frame) {
        int n = 2 * frames.size();
        RealMatrix known = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < frames.size(); i++) {
            Witnesses w = frames.get(i).witnesses();
            if (!w.leftOut().contains(Witness.LIMB)) {
                double weight = 1 / (Math.pow(w.limbSigmaPx(), 2) + LIMB_FLOOR_PX * LIMB_FLOOR_PX);
                known.addToEntry(2 * i, 2 * i, weight);
                known.addToEntry(2 * i + 1, 2 * i + 1, weight);
            }
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
