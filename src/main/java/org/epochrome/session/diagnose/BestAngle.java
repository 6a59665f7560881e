package org.epochrome.session.diagnose;

import java.util.function.DoubleUnaryOperator;

/**
 * The angle at which an agreement is greatest.
 *
 * @param deg the angle; 0 if nothing agrees anywhere
 * @param agreement there; 0 if nothing agrees anywhere
 */
record BestAngle(double deg, double agreement) {
    private static final double FINE_DEG = 1;

    /** Searches the whole circle in steps, then around the best step by a degree. */
    static BestAngle search(double stepDeg, DoubleUnaryOperator agreement) {
        BestAngle coarse = new BestAngle(0, 0).better(-180, 180 - stepDeg / 2, stepDeg, agreement);
        return coarse.better(coarse.deg - stepDeg, coarse.deg + stepDeg, FINE_DEG, agreement);
    }

    private BestAngle better(double fromDeg, double toDeg, double stepDeg, DoubleUnaryOperator agreement) {
        BestAngle best = this;
        for (double deg = fromDeg; deg <= toDeg; deg += stepDeg) {
            double there = agreement.applyAsDouble(deg);
            if (there > best.agreement) {
                best = new BestAngle(deg, there);
            }
        }
        return best;
    }
}
