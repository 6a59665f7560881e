package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.job.Progress;
import org.junit.jupiter.api.Test;

class ZonalDarkeningTest {
    private static final double RADIUS_PX = 120;

    /** Light by a formula: belts of any brightness, and an exponent that grows towards the poles. */
    private static ZonalDarkening measured(DoubleUnaryOperator brightness, DoubleUnaryOperator exponent) {
        ZonalDarkening.Sums sums = new ZonalDarkening.Sums();
        for (double latitude = -1.3; latitude <= 1.3; latitude += 1 / RADIUS_PX) {
            for (double longitude = -1.2; longitude <= 1.2; longitude += 1 / RADIUS_PX) {
                double emission = Math.cos(latitude) * Math.cos(longitude);
                double incidence = Math.cos(latitude) * Math.cos(longitude - 0.2);
                if (emission > 0.15 && incidence > 0.1) {
                    double slope = Math.log(incidence * emission);
                    double light = brightness.applyAsDouble(latitude) + slope * exponent.applyAsDouble(latitude);
                    sums.add(latitude, emission, slope, light);
                }
            }
        }
        return sums.darkening(RADIUS_PX);
    }

    @Test
    void exponentsOfParallelsAreFound() {
        ZonalDarkening found = measured(l -> 0.2 * Math.cos(9 * l), l -> 0.05 - 0.1 * Math.abs(l));
        for (double latitude = -0.8; latitude <= 0.8; latitude += 0.1) {
            // The expectation of equal exponents takes up to a half of a difference, the window of 8 degrees 0.007
            // at the equator.
            double expected = 0.05 - 0.1 * Math.abs(latitude);
            assertEquals(expected, found.exponent(latitude), 0.012 + 0.5 * Math.abs(expected));
        }
        assertTrue(found.exponent(0.8) < -0.01 && found.exponent(0) > 0.02);
    }

    @Test
    void beltsAloneChangeNoExponent() {
        ZonalDarkening found = measured(l -> 0.3 * Math.sin(14 * l), l -> 0);
        for (double latitude = -1; latitude <= 1; latitude += 0.1) {
            // What the grid of half degrees leaves of steep belts. Measured: 1e-4.
            assertEquals(0, found.exponent(latitude), 3e-4);
        }
    }

    /**
     * A hazy pole stands higher than the body: a disk whose polar radius is 0.3 % too large, and of which the frame cuts off a
     * side, keeps the radius of its equator. Measured: 0.005 px; with poles that are not free it is 0.21 px, and the centre 0.15 px off.
     */
    @Test
    void liftedPolesDoNotWidenTheEquator() {
        double tilt = Math.toRadians(-3);
        double sun = Math.toRadians(-10);
        Globe globe =
                new Globe(0.935, tilt, Math.cos(tilt) * Math.cos(sun), Math.cos(tilt) * Math.sin(sun), Math.sin(tilt));
        Disk disk = new Disk(150.4, 149.3, RADIUS_PX, 0, false);
        Shading shading = new Shading(0.8, 1.6, Smear.NONE);
        int side = 300;
        Plane frame = shading.picture(new View(globe.withAxisRatio(0.935 * 1.003), disk), side, side);
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                frame.set(
                        x, y, x > 262 ? Float.NaN : frame.at(x, y) + 0.002f * (float) Math.sin(7.3 * x + 3.1 * x * y));
            }
        }
        FittedDisk found = new DiskFit(globe, true, false, Smear.NONE, OptionalDouble.empty(), OptionalDouble.empty())
                .fit(frame, Progress.NONE);
        assertEquals(RADIUS_PX, found.disk().equatorialRadiusPx(), 0.006);
        assertEquals(disk.x(), found.disk().x(), 0.01);
        assertEquals(disk.y(), found.disk().y(), 0.012);
    }
}
