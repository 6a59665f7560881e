package org.epochrome.align;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class NetworkAdjustmentTest {
    /** Two measurements of one frame: the weighted mean and its error, by the usual formula for weighted means. */
    @Test
    void twoMeasurementsGiveTheWeightedMean() {
        List<Link> links = List.of(link(0, 1, 1.0, 0, 0.1), link(0, 1, 1.1, 0, 0.2));
        NetworkAdjustment adjusted = new NetworkAdjustment(2, 0, links);
        double[] second = {0, 1};
        // (1 * 100 + 1.1 * 25) / 125 = 1.02, variance 1 / 125
        assertArrayEquals(new double[] {1.02, 0}, adjusted.sum(second), 1e-6);
        assertEquals(1.0 / 125, adjusted.covariance(second, second)[0][0], 1e-6);
        assertEquals(0.5 * 0.01 / (0.01 + 0.04), adjusted.contradiction(), 1e-6);
    }

    /** Along a chain displacements add up, and so do variances. */
    @Test
    void aChainAddsUp() {
        List<Link> links = List.of(link(0, 1, 0.5, -0.2, 0.03), link(1, 2, 0.25, 0.1, 0.04));
        NetworkAdjustment adjusted = new NetworkAdjustment(3, 0, links);
        double[] third = {0, 0, 1};
        assertArrayEquals(new double[] {0.75, -0.1}, adjusted.sum(third), 1e-6);
        assertEquals(0.05 * 0.05, adjusted.covariance(third, third)[1][1], 1e-6);
    }

    /** Birge 1932: errors grow by the root of chi-square over the degrees of freedom, here (2 / 0.1414)^2 / 2 = 100. */
    @Test
    void contradictionMakesErrorsLarger() {
        List<Link> links = List.of(link(0, 1, 1, 0, 0.1), link(0, 1, 3, 0, 0.1));
        NetworkAdjustment adjusted = new NetworkAdjustment(2, 0, links);
        double[] second = {0, 1};
        assertEquals(100, adjusted.contradiction(), 1e-9);
        assertEquals(0.005 * 100, adjusted.covariance(second, second)[0][0], 1e-4);
    }

    @Test
    void whatWasNotMeasuredIsUnsure() {
        NetworkAdjustment adjusted =
                new NetworkAdjustment(2, 0, List.of(new Link(0, 1, Shift.UNKNOWN, Witness.DETAIL)));
        double[] second = {0, 1};
        assertTrue(adjusted.covariance(second, second)[0][0] > 1e5);
    }

    private static Link link(int from, int to, double x, double y, double sigma) {
        return new Link(from, to, new Shift(x, y, sigma, sigma), Witness.DETAIL);
    }
}
