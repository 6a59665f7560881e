package org.epochrome.image.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.epochrome.image.Pictures;
import org.epochrome.image.Plane;
import org.epochrome.truth.TruthTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SplineTest {
    /**
     * Sums of sixteen products in floats. On white noise the coefficients reach some 6 times the pixels, and a float
     * holds them to 3e-7 each.
     */
    private static final double FLOATS = 3e-6;

    @Test
    void agreesWithScipyOnThePictureAndBeyondIt() {
        Spline spline = new Spline(Pictures.read("image/image.csv"));
        List<TruthTable.Row> rows = TruthTable.rows("image/spline.csv");
        for (TruthTable.Row row : rows) {
            assertEquals(
                    row.number("value"), spline.at(row.number("x"), row.number("y")), FLOATS, () -> row.toString());
        }
        assertEquals(300, rows.size());
    }

    @Test
    void goesThroughThePixels() {
        Plane plane = Pictures.read("image/image.csv");
        Spline spline = new Spline(plane);
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                assertEquals(plane.at(x, y), spline.at(x, y), FLOATS);
            }
        }
    }

    /** A cubic spline reproduces straight lines away from the mirror at the edges, whose kink fades by 0.27 a pixel. */
    @Test
    void keepsASlope() {
        Plane plane = new Plane(40, 40);
        for (int y = 0; y < 40; y++) {
            for (int x = 0; x < 40; x++) {
                plane.set(x, y, 0.02f * x - 0.01f * y);
            }
        }
        Spline spline = new Spline(plane);
        for (double t = 12; t < 27; t += 0.37) {
            assertEquals(0.02 * t - 0.01 * (39 - t), spline.at(t, 39 - t), FLOATS);
        }
    }

    @ParameterizedTest
    @CsvSource({"-0.5,-0.5,true", "8.5,5.5,true", "-0.51,0,false", "0,5.51,false", "8.51,2,false"})
    void reachesHalfAPixelBeyondTheOutermostCentres(double x, double y, boolean inside) {
        Spline spline = new Spline(new Plane(9, 6));
        assertEquals(inside, spline.contains(x, y));
    }

    @Test
    void doesNotTouchItsPlane() {
        Plane plane = Plane.filled(20, 20, 1);
        plane.set(7, 7, 2);
        Plane before = plane.copy();
        assertTrue(new Spline(plane).at(7.5, 7) < 2);
        for (int i = 0; i < 400; i++) {
            assertEquals(before.data()[i], plane.data()[i]);
        }
    }
}
