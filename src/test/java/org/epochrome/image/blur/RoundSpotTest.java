package org.epochrome.image.blur;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;

class RoundSpotTest {
    private static final int SIDE = 161;
    private static final double RADIUS_PX = 7.3;
    private static final double BLUR_PX = 1.4;
    private static final int FINE = 12;

    /** Against a disk that is painted by counting samples and blurred on pixels. */
    @Test
    void hasTheWingsOfTheSpreadFunction() {
        Wings wings = Wings.of(new double[] {3.5, 10}, new double[] {0.12, 0.08});
        Plane painted = wings.of(Gaussian.blur(disk(), BLUR_PX));
        RoundSpot spot = new RoundSpot(RADIUS_PX, BLUR_PX, wings, new double[] {0}, new double[] {0});
        RoundSpot core = new RoundSpot(RADIUS_PX, BLUR_PX, Wings.NONE, new double[] {0}, new double[] {0});
        int middle = SIDE / 2;
        double coreOff = 0;
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                double expected = painted.at(x, y);
                // a tenth of a per cent where the wings end, and two by the sampling of the painted rim
                assertEquals(expected, spot.at(x - middle, y - middle), 0.003, x + ", " + y);
                coreOff = Math.max(coreOff, Math.abs(expected - core.at(x - middle, y - middle)));
            }
        }
        assertTrue(coreOff > 0.05, "wings make a difference: " + coreOff);
    }

    private static Plane disk() {
        Plane disk = new Plane(SIDE, SIDE);
        double middle = 0.5 * (SIDE - 1);
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                int inside = 0;
                for (int k = 0; k < FINE * FINE; k++) {
                    double dx = x + (k % FINE + 0.5) / FINE - 0.5 - middle;
                    double dy = y + (Math.floorDiv(k, FINE) + 0.5) / FINE - 0.5 - middle;
                    inside += Math.hypot(dx, dy) < RADIUS_PX ? 1 : 0;
                }
                disk.set(x, y, inside / (float) (FINE * FINE));
            }
        }
        return disk;
    }
}
