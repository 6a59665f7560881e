package org.epochrome.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.epochrome.demo.scene.Angle;
import org.epochrome.demo.scene.Power;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The quick functions of the ray caster against those of the platform. */
class PlainArithmeticTest {
    private static final int TRIES = 100_000;

    /** Exponents are those of limbs, less 1: from flat to darker than Lambert. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.5, -0.3, -0.03, 0, 0.2, 1})
    void aPowerIsThatOfThePlatform(double exponent) {
        Power power = new Power(exponent);
        Random random = new Random(1);
        double worst = 0;
        for (int i = 0; i < TRIES; i++) {
            // also near the terminator, and so small that the tables end
            double number = i % 2 == 0 ? 1 - random.nextDouble() : Math.pow(2, -80 * random.nextDouble());
            worst = Math.max(worst, Math.abs(power.of(number) / StrictMath.pow(number, exponent) - 1));
        }
        assertTrue(worst < 1e-15, "off by " + worst);
        assertEquals(1, power.of(1), 4e-16);
        assertEquals(StrictMath.pow(2.5, exponent), power.of(2.5), 0, "beyond 2 it is the platform's");
    }

    @Test
    void anAngleIsThatOfThePlatform() {
        Random random = new Random(2);
        double worst = 0;
        for (int i = 0; i < TRIES; i++) {
            double x = random.nextGaussian();
            double y = random.nextGaussian() * (i % 2 == 0 ? 1 : 1e-9);
            worst = Math.max(worst, Math.abs(Angle.of(y, x) - StrictMath.atan2(y, x)));
            worst = Math.max(worst, Math.abs(Angle.of(x, y) - StrictMath.atan2(x, y)));
        }
        assertTrue(worst < 1e-15, "off by " + worst);
    }

    @Test
    void anglesAlongTheAxesAreExact() {
        double[][] directions = {{0, 1}, {1, 0}, {0, -1}, {-1, 0}, {1, 1}, {-1, -1}, {0, 0}};
        for (double[] yx : directions) {
            assertEquals(StrictMath.atan2(yx[0], yx[1]), Angle.of(yx[0], yx[1]), 0);
        }
    }
}
