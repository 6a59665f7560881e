package org.epochrome.moon.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import org.epochrome.ephemeris.Body;
import org.epochrome.moon.MoonOrShadow;
import org.epochrome.moon.PaintedFrame;
import org.epochrome.moon.SkyPoint;
import org.epochrome.moon.SpotFit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The fit of one spot against spots painted by counting samples. */
class MoonFitTest {
    private static final Instant WHEN = Instant.parse("2024-12-18T19:24:30Z");
    private static final double RADIUS = 0.05;

    private static PaintedFrame frame() {
        return new PaintedFrame(Body.JUPITER, WHEN, 0.3, -0.2);
    }

    private static SpotFit fitted(PaintedFrame painted, SkyPoint guess, boolean shadow) {
        MoonOrShadow companion = MoonOrShadow.found(shadow, RADIUS, at -> guess);
        return new MoonFit(MoonField.of(painted.frame(), painted.plane()), companion, 2).free(2);
    }

    private static double offPx(SpotFit found, SkyPoint place) {
        return found.place().minus(place).length() * PaintedFrame.RADIUS_PX;
    }

    /** Beside the disk, on it, and across its limb; two pixels off where it is looked for. */
    @ParameterizedTest
    @CsvSource({"1.25, 0.2, 0.5", "0.3, -0.2, 0.3", "-0.2, 0.4, 1.3", "0.97, 0.1, 0.6"})
    void findsAMoonWhereItIsAndHowBright(double side, double pole, double brightness) {
        SkyPoint place = new SkyPoint(side, pole);
        SpotFit found =
                fitted(frame().moon(place, RADIUS, brightness).noisy(3), place.plus(new SkyPoint(0.025, -0.02)), false);
        assertTrue(offPx(found, place) < 0.05, found + " off " + offPx(found, place));
        assertEquals(brightness, found.level(), 0.03);
        assertTrue(found.explained() > 0.8, found.toString());
    }

    @ParameterizedTest
    @CsvSource({"0.1, 0.1, 0", "-0.5, 0.3, 0.3"})
    void findsAShadowAndWhatItLetsThrough(double side, double pole, double through) {
        SkyPoint place = new SkyPoint(side, pole);
        SpotFit found =
                fitted(frame().shadow(place, RADIUS, through).noisy(4), place.plus(new SkyPoint(-0.02, 0.01)), true);
        assertTrue(offPx(found, place) < 0.05, found + " off " + offPx(found, place));
        assertEquals(through, found.level(), 0.03);
        assertEquals(through - 1, found.contrast(true), 0.04);
    }

    /** What a fit says of its own error is what fits of many noises scatter by. */
    @Test
    void knowsHowWellItKnowsThePlace() {
        SkyPoint place = new SkyPoint(1.3, -0.1);
        double squares = 0;
        double said = 0;
        int runs = 12;
        for (int i = 0; i < runs; i++) {
            SpotFit found = fitted(frame().moon(place, RADIUS, 0.05).noisy(100 + i), place, false);
            squares += Math.pow(offPx(found, place), 2) / 2;
            said += found.sigmaPx() / runs;
        }
        // twelve times two places know a scatter to a seventh
        assertEquals(1, Math.sqrt(squares / runs) / said, 0.5, "said " + said);
    }

    @Test
    void explainsNothingWhereThereIsNothing() {
        SpotFit found = fitted(frame().noisy(5), new SkyPoint(0.2, 0.1), false);
        assertTrue(found.explained() < 0.2, found.toString());
    }
}
