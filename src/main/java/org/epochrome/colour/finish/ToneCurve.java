package org.epochrome.colour.finish;

import org.epochrome.text.Message;

/**
 * A curve on the values of a finished picture, through 0, three points and 1; it rises everywhere and does not overshoot
 * (Fritsch &amp; Carlson 1980, SIAM J. Numer. Anal. 17, 238: slopes limited so that a cubic is monotone).
 *
 * @param quarter what 0.25 becomes
 * @param half what 0.5 becomes
 * @param threeQuarters what 0.75 becomes; the three do not fall
 */
public record ToneCurve(double quarter, double half, double threeQuarters) {
    /** Leaves values as they are. */
    public static final ToneCurve NONE = new ToneCurve(0.25, 0.5, 0.75);

    private static final int PIECES = 4;

    public ToneCurve {
        if (!(quarter >= 0 && quarter <= half && half <= threeQuarters && threeQuarters <= 1)) {
            throw new IllegalArgumentException(Message.text("value.toneCurve", quarter, half, threeQuarters));
        }
    }

    /** What a value from 0 to 1 becomes. */
    public double of(double value) {
        double[] y = {0, quarter, half, threeQuarters, 1};
        int piece = (int) Math.max(0, Math.min(PIECES - 1, Math.floor(PIECES * value)));
        double t = PIECES * value - piece;
        double rise = y[piece + 1] - y[piece];
        double from = slope(y, piece);
        double to = slope(y, piece + 1);
        return y[piece] + t * (from + t * (3 * rise - 2 * from - to + t * (from + to - 2 * rise)));
    }

    /** Slope at a point, per piece: the harmonic mean of those beside it; at the ends that of the piece. */
    private static double slope(double[] y, int point) {
        double before = y[Math.max(1, point)] - y[Math.max(1, point) - 1];
        double after = y[Math.min(PIECES, point + 1)] - y[Math.min(PIECES, point + 1) - 1];
        return before <= 0 || after <= 0 ? 0 : 2 * before * after / (before + after);
    }
}
