package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SmearPriorTest {
    /** A centre that is its own error plus twice that of the tilt: the variance of a sum of independent errors. */
    @Test
    void whatTheSmearAddsCountsManyTimes() {
        double[][] covariance = new double[DiskModel.SHAPE][DiskModel.SHAPE];
        for (int i = 0; i < DiskModel.SHAPE; i++) {
            covariance[i][i] = 0.01;
        }
        double tilt = 0.0025;
        covariance[DiskModel.SMEAR_TILT][DiskModel.SMEAR_TILT] = tilt;
        covariance[DiskModel.X][DiskModel.X] = 0.01 + 4 * tilt;
        covariance[DiskModel.X][DiskModel.SMEAR_TILT] = 2 * tilt;
        covariance[DiskModel.SMEAR_TILT][DiskModel.X] = 2 * tilt;
        double[] widened = SmearPrior.widened(covariance);
        assertEquals(0.01 + 25 * 4 * tilt, widened[DiskModel.X], 1e-12);
        assertEquals(25 * tilt, widened[DiskModel.SMEAR_TILT], 1e-12);
        assertEquals(0.01, widened[DiskModel.Y], 1e-12);
    }
}
