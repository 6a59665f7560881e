package org.epochrome.disk.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.SaturnSketch;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.job.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The fit of globe and rings on sketches of Saturn whose place and posture are known; north is never told. */
class RingedFitTest {
    private static final int WIDTH = 230;
    private static final int HEIGHT = 210;
    private static final double RADIUS_PX = 40;

    private static DiskFit fit(SaturnSketch sketch, boolean mirrored) {
        return new DiskFit(sketch.globe(), true, mirrored, Smear.NONE, OptionalDouble.empty(), OptionalDouble.empty());
    }

    private static SaturnSketch sketch(
            double opening, double sunLatitude, double sunEast, double north, boolean mirrored) {
        return new SaturnSketch(opening, sunLatitude, sunEast, 113.3, 106.8, RADIUS_PX, north, mirrored, 0);
    }

    /**
     * Openings from almost edge-on to the widest, both sides, before and after opposition.
     */
    @ParameterizedTest
    @CsvSource({
        "26.5, 25.1, 5, 17, false",
        "20.5, 22.4, -5.8, -163, true",
        "-17, -17.6, 0.3, 92, false",
        "-9, -7.5, -4, 75, true",
        "4, 2.5, 3, -40, false",
        "-2, -2.6, 0.2, 160, false",
        "1.2, 1.9, -2, 5, true"
    })
    void findsPlaceScaleAndNorth(double opening, double sunLatitude, double sunEast, double north, boolean mirrored) {
        SaturnSketch sketch = sketch(opening, sunLatitude, sunEast, north, mirrored);
        FittedDisk found = fit(sketch, mirrored).fit(sketch.frame(WIDTH, HEIGHT, 3), Progress.NONE);
        double off = Math.hypot(found.disk().x() - sketch.x(), found.disk().y() - sketch.y());
        assertTrue(off < 0.05, "centre off by " + off);
        assertEquals(RADIUS_PX, found.disk().equatorialRadiusPx(), 0.002 * RADIUS_PX);
        assertEquals(0, Disk.wrapDeg(found.disk().northAngleDeg() - north), 0.05);
        assertEquals(SaturnSketch.BLUR_PX, found.shading().blurPx(), 0.08);
        assertEquals(SaturnSketch.SKY, found.background(), 0.002);
    }

    /** Dispersion draws a frame out; the fit knows how far. */
    @Test
    void knowsTheSmear() {
        SaturnSketch sketch = sketch(20, 21, -5, -6, false);
        Smear smear = Smear.along(30, -4, -2.3, -0.8, 0.9, 2.6, 4.5);
        Plane frame = smear.of(sketch.frame(WIDTH, HEIGHT, 4));
        FittedDisk found = new DiskFit(
                        sketch.globe(), true, false, smear, OptionalDouble.empty(), OptionalDouble.empty())
                .fit(frame, Progress.NONE);
        double off = Math.hypot(found.disk().x() - sketch.x(), found.disk().y() - sketch.y());
        assertTrue(off < 0.008, "centre off by " + off);
        assertEquals(0, Disk.wrapDeg(found.disk().northAngleDeg() + 6), 0.01);
    }

    /** The globe's shadow lies on one side: in the wrong sense the model leaves several times more. */
    @Test
    void theShadowOnTheRingsTellsReflections() {
        SaturnSketch sketch = sketch(22, 22.6, 3, 10, false);
        Plane frame = sketch.frame(WIDTH, HEIGHT, 5);
        double right = fit(sketch, false).rough(frame, Progress.NONE).residual();
        double wrong = fit(sketch, true).rough(frame, Progress.NONE).residual();
        assertTrue(wrong > 2 * right, wrong + " against " + right);
    }

    @Test
    void refusesAPlanetWithoutRings() {
        SaturnSketch sketch = sketch(20, 20, 0, 0, false);
        Globe bare = new Globe(0.9, 0.3, Math.cos(0.3), 0, Math.sin(0.3));
        View view = new View(bare, new Disk(110, 100, 50, 0, false));
        Plane frame = new Shading(0.9, 1.5, Smear.NONE).picture(view, WIDTH, HEIGHT);
        DiskFit fit = fit(sketch, false);
        assertThrows(DiskNotFound.class, () -> fit.fit(frame, Progress.NONE));
    }
}
