package org.epochrome.plan.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TurningLossTest {
    /** Against the slope of where a point of the equator stands at the epoch over where it stood in the frame. */
    @ParameterizedTest
    @CsvSource({"0, 5", "0.5, 5", "0.8, 8", "0.9, 20", "0.95, 3"})
    void theBlurGrowsAsTurningStretches(double distance, double turnDeg) {
        double there = Math.sin(Math.asin(distance) + Math.toRadians(turnDeg));
        double step = 1e-6;
        double here = Math.sin(Math.asin(there - step) - Math.toRadians(turnDeg));
        double beyond = Math.sin(Math.asin(there + step) - Math.toRadians(turnDeg));
        assertEquals((beyond - here) / (2 * step), new TurningLoss(turnDeg).growth(distance), 1e-6);
    }

    /** By hand: 0.8 of the radius is 53.13 degrees from the centre; cos 53.13 / cos 61.31 = 0.6 / 0.48. */
    @Test
    void theLargestTurnWidensByAQuarter() {
        assertEquals(8.19, TurningLoss.largestTurnDeg(), 0.01);
        assertEquals(1.25, new TurningLoss(TurningLoss.largestTurnDeg()).growth(0.8), 1e-9);
        // Jupiter turns by 36.27 degrees an hour: 16.37 / 36.27 h = 27.1 min
        assertEquals(27.1, SequencePlanner.longestSequenceS(36.27) / 60, 0.1);
    }

    /** By hand: a turn of 10 degrees hides 1 - cos 10 = 0.0152 of the radius. */
    @Test
    void whatLayBeyondTheLimbIsUnseen() {
        assertEquals(0.0152, new TurningLoss(10).unseen(), 0.0001);
        assertEquals(Double.POSITIVE_INFINITY, new TurningLoss(10).growth(0.99));
    }
}
