package org.epochrome.disk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SmearPriorTest {
    /** A centre that is its own error plus twice that of the tilt: the variance of a sum of independent errors. */
    @Test
    void whatTheSmearAddsCountsManyTimes() {
        double[][] covariance = new double[Unknowns.SHAPE][Unknowns.SHAPE];
        for (int i = 0; i < Unknowns.SHAPE; i++) {
            covariance[i][i] = 0.01;
        }
        double tilt = 0.0025;
        covariance[Unknowns.SMEAR_TILT][Unknowns.SMEAR_TILT] = tilt;
        covariance[Unknowns.X][Unknowns.X] = 0.01 + 4 * tilt;
        covariance[Unknowns.X][Unknowns.SMEAR_TILT] = 2 * tilt;
        covariance[Unknowns.SMEAR_TILT][Unknowns.X] = 2 * tilt;
        double[] widened = SmearPrior.widened(covariance);
        assertEquals(0.01 + 25 * 4 * tilt, widened[Unknowns.X], 1e-12);
        assertEquals(25 * tilt, widened[Unknowns.SMEAR_TILT], 1e-12);
        assertEquals(0.01, widened[Unknowns.Y], 1e-12);
    }
}
