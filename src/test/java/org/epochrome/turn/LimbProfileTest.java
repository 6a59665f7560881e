package org.epochrome.turn;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class LimbProfileTest {
    /** A limb that darkens by a formula beyond its law: means over 0.02 of a straight line are that line. */
    @Test
    void meansAroundTheDiskAreFound() {
        LimbProfile.Sums sums = new LimbProfile.Sums();
        for (double emission = 0.0005; emission < 1; emission += 0.001) {
            for (int spoke = 0; spoke < 400; spoke++) {
                sums.add(emission, 0.5, 0.2 * Math.max(0, 0.3 - emission) + 0.1 * Math.sin(spoke * Math.PI / 200));
            }
        }
        LimbProfile found = sums.profile();
        for (double emission = 0.03; emission < 0.27; emission += 0.01) {
            // The expectation that there is nothing takes a half of a per cent.
            assertEquals(0.2 * (0.3 - emission), found.at(emission), 4e-4);
        }
        assertEquals(0, found.at(0.8), 1e-9);
        assertEquals(found.at(0.005), found.at(0), 1e-9);
    }

    @Test
    void nothingSeenMeansNothing() {
        assertEquals(0, new LimbProfile.Sums().profile().at(0.1));
    }
}
