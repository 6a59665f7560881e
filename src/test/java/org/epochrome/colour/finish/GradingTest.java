package org.epochrome.colour.finish;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Tone;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;

/** Levels, gains and curves against what their definitions say for single values. */
class GradingTest {
    private static ColourCube ramp() {
        Plane plane = new Plane(11, 1);
        for (int i = 0; i < 11; i++) {
            plane.data()[i] = i / 10f;
        }
        return new ColourCube(plane, plane.copy(), plane.copy());
    }

    private static Plane disk() {
        return Plane.filled(11, 1, 1);
    }

    private static List<Plane> shown(Grading grading) {
        ColourCube cube = ramp();
        return Finish.shown(cube, Finish.brightest(cube, disk()), Tone.DEFAULT, grading);
    }

    @Test
    void noGradingChangesNothing() {
        List<Plane> plain = Finish.shown(ramp(), disk(), Tone.DEFAULT);
        for (int c = 0; c < 3; c++) {
            assertArrayEquals(plain.get(c).data(), shown(Grading.NONE).get(c).data());
        }
    }

    @Test
    void levelsMapBlackMiddleAndWhite() {
        LevelPoints points = new LevelPoints(0.1, 0.4, 0.9);
        assertEquals(0, points.of(0.1), 1e-12);
        assertEquals(0.5, points.of(0.1 + 0.4 * 0.8), 1e-12);
        assertEquals(1, points.of(0.9), 1e-12);
        assertEquals(0, points.of(0.02), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> new LevelPoints(0.5, 0.5, 0.5));
    }

    @Test
    void levelsOfOneChannelLeaveTheOthers() {
        Grading red = Grading.NONE.with("red", new LevelPoints(0.2, 0.5, 0.8));
        List<Plane> plain = shown(Grading.NONE);
        List<Plane> graded = shown(red);
        assertArrayEquals(plain.get(1).data(), graded.get(1).data());
        int middle = 5;
        double expected = new LevelPoints(0.2, 0.5, 0.8).of(plain.get(0).data()[middle]);
        // The table has 4096 steps.
        assertEquals(expected, graded.get(0).data()[middle], 1e-4);
        assertEquals(Grading.NONE, red.with("red", LevelPoints.NONE));
    }

    @Test
    void theCurveRisesThroughItsPoints() {
        ToneCurve curve = new ToneCurve(0.1, 0.5, 0.95);
        assertEquals(0.1, curve.of(0.25), 1e-12);
        assertEquals(0.5, curve.of(0.5), 1e-12);
        assertEquals(0.95, curve.of(0.75), 1e-12);
        assertEquals(0, curve.of(0), 1e-12);
        assertEquals(1, curve.of(1), 1e-12);
        double before = 0;
        for (int i = 1; i <= 1000; i++) {
            double now = curve.of(i / 1000.0);
            assertTrue(now >= before && now <= 1, "at " + i);
            before = now;
        }
        for (int i = 0; i <= 100; i++) {
            assertEquals(i / 100.0, ToneCurve.NONE.of(i / 100.0), 1e-12);
        }
    }

    @Test
    void gainsAndOffsetsActOnLinearLight() {
        double[] colour = {0.2, 0.4, 0.6};
        Grading.NONE
                .with(Grading::gains, new Gains(2, 1, 0.5))
                .with(Grading::offsets, new ChannelOffsets(0.1, 0, -0.1))
                .light(colour, 2);
        assertArrayEquals(new double[] {0.6, 0.4, 0.1}, colour, 1e-12);
    }

    @Test
    void channelsAreNamed() {
        assertThrows(
                IllegalArgumentException.class,
                () -> Grading.NONE.with(Grading::levels, Map.of("infrared", LevelPoints.NONE)));
    }
}
