package org.epochrome.colour.finish;

import org.epochrome.text.Message;

/**
 * Which values of a finished picture become black, middle and white.
 *
 * @param black part of full scale that becomes 0; less than white
 * @param mid what becomes one half, as a part of the way from black to white, 0.05 to 0.95
 * @param white part of full scale that becomes 1, at most 1
 */
public record LevelPoints(double black, double mid, double white) {
    /** Leaves values as they are. */
    public static final LevelPoints NONE = new LevelPoints(0, 0.5, 1);

    public LevelPoints {
        if (!(black >= 0 && white <= 1 && white - black >= 0.01 && mid >= 0.05 && mid <= 0.95)) {
            throw new IllegalArgumentException(Message.text("value.levels", black, mid, white));
        }
    }

    /** What a value becomes, 0 to 1. */
    public double of(double value) {
        double part = Math.max(0, Math.min(1, (value - black) / (white - black)));
        return mid == 0.5 ? part : Math.pow(part, Math.log(0.5) / Math.log(mid));
    }
}
