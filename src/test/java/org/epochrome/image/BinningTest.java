package org.epochrome.image;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BinningTest {
    @Test
    void takesTheMeanOfSquaresAndLeavesTheRestOut() {
        Plane plane = new Plane(5, 3, new float[] {1, 2, 3, 4, 99, 5, 6, 7, 9, 99, 99, 99, 99, 99, 99});
        Plane small = Binning.by(2, plane);
        assertEquals(2, small.width());
        assertEquals(1, small.height());
        assertArrayEquals(new float[] {3.5f, 5.75f}, small.data());
    }

    /** A slope's value tells the place. */
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 5})
    void liesWhereItSays(int factor) {
        Plane plane = new Plane(31, 23);
        for (int y = 0; y < 23; y++) {
            for (int x = 0; x < 31; x++) {
                plane.set(x, y, 100 * y + x);
            }
        }
        Plane small = Binning.by(factor, plane);
        for (int y = 0; y < small.height(); y++) {
            for (int x = 0; x < small.width(); x++) {
                double column = factor * x + 0.5 * (factor - 1);
                double row = factor * y + 0.5 * (factor - 1);
                assertEquals(
                        100 * row + column, small.at(x, y), 1e-6); // floats hold the sums of 25 numbers to 2300 exactly
            }
        }
        assertEquals(31 / factor, small.width());
        assertEquals(23 / factor, small.height());
    }

    @Test
    void byOneIsThePlaneItself() {
        Plane plane = new Plane(4, 4);
        assertSame(plane, Binning.by(1, plane));
    }

    @Test
    void keepsNoDataAsNoData() {
        Plane plane = Plane.filled(4, 2, 1);
        plane.set(1, 1, Float.NaN);
        assertArrayEquals(new float[] {Float.NaN, 1}, Binning.by(2, plane).data());
    }
}
