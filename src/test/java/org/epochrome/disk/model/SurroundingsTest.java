package org.epochrome.disk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.epochrome.image.Plane;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurroundingsTest {
    /** Seeing has a wing less than diffraction; nothing in a frame depends on that one, whatever the list held before. */
    @ParameterizedTest
    @CsvSource({"false, 3", "true, 4"})
    void slopesOfWings(boolean sharp, int wings) {
        Plane data = new Plane(40, 40);
        Arrays.fill(data.data(), 1);
        Surroundings surroundings = new Surroundings(data, 1, sharp);
        double[] slopes = new double[2 + Unknowns.SHAPE];
        Arrays.fill(slopes, 7);
        surroundings.putSlopes(20 * 40 + 20, slopes, 2);
        for (int i = 0; i < Surroundings.WINGS; i++) {
            double slope = slopes[2 + Unknowns.WINGS + i];
            if (i < wings) {
                assertTrue(slope > 0 && slope < 1.01, "wing " + i + ": " + slope);
            } else {
                assertEquals(0, slope);
            }
        }
        assertEquals(7, slopes[1]);
    }
}
