package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.epochrome.demo.Noise;
import org.epochrome.demo.Rendered;
import org.epochrome.demo.Surface;
import org.epochrome.demo.Surfaces;
import org.epochrome.demo.TrueDisk;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.image.Smear;
import org.epochrome.job.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A drawn-out invented Jupiter, the mean of pictures that the ray caster took at places along a line, against the sharp one. */
class UnsmearTest {
    private static final Portrait JUPITER =
            Portrait.full(Body.JUPITER, 3, 70, 25).shaded(0.9, 4);
    private static final double DIRECTION_DEG = 40;
    /** Blue light thins out to one side, as it does in the atmosphere. */
    private static final double[] OFFSETS_PX = {-3.1, -2.7, -2.2, -1.6, -1, -0.3, 0.5, 1.3, 2.2, 3.2, 3.7};

    private static final Surface SURFACE = Surfaces.jupiter();
    private static final Rendered SHARP = JUPITER.taken(SURFACE, Noise.NONE);
    private static final Plane DRAWN = drawn();

    private static Plane drawn() {
        Plane sum = new Plane(SHARP.pixels().width(), SHARP.pixels().height());
        double angle = Math.toRadians(DIRECTION_DEG);
        for (double offset : OFFSETS_PX) {
            Plane there = JUPITER.offset(
                            JUPITER.offsetX() - offset * Math.sin(angle), JUPITER.offsetY() - offset * Math.cos(angle))
                    .taken(SURFACE, Noise.NONE)
                    .pixels();
            for (int i = 0; i < sum.data().length; i++) {
                sum.data()[i] += there.data()[i] / OFFSETS_PX.length;
            }
        }
        return sum;
    }

    /**
     * Errors, as parts of the error before, of detail and of the limb. Measured wholly: 0.17 and 0.25 without noise, 0.27 and 0.59 at
     * a signal to noise of 200, 0.49 and 0.88 at 100, 0.96 and 1.01 at 20; by half: 0.36 and 0.35, 0.40 and 0.60, 0.56 and 0.87,
     * 0.96 and 1.01.
     */
    @ParameterizedTest
    @CsvSource({
        "ALL, 0, 0.25, 0.4",
        "ALL, 0.005, 0.8, 1",
        "ALL, 0.01, 0.8, 1",
        "ALL, 0.05, 1, 1.02",
        "HALF, 0, 0.5, 0.5",
        "HALF, 0.005, 0.8, 1",
        "HALF, 0.01, 0.8, 1",
        "HALF, 0.05, 1, 1.02"
    })
    void sharpensDetailAndSparesTheLimb(Unsmear.Extent extent, double noise, double mostDetail, double mostLimb) {
        Plane frame = noisy(noise);
        Plane restored = Unsmear.of(frame, fitted(frame), JUPITER.globe(), noise, extent, Progress.NONE);
        double detail = error(restored, 0, 0.8) / error(frame, 0, 0.8);
        double limb = error(restored, 0.9, 1.1) / error(frame, 0.9, 1.1);
        assertTrue(detail < mostDetail, "detail error is " + detail + " of what it was");
        assertTrue(limb < mostLimb, "limb error is " + limb + " of what it was");
    }

    @Test
    void halfOfALopsidedSmearIsLeftAndLiesEven() {
        Shading drawn = new Shading(1, 2, Smear.along(DIRECTION_DEG, OFFSETS_PX));
        Smear left = Unsmear.left(drawn, Unsmear.Extent.HALF);
        assertEquals(0.5 * drawn.smear().lengthPx(), left.lengthPx(), 1e-9);
        assertEquals(0, left.leanPx(1), 1e-9);
        assertSame(Smear.NONE, Unsmear.left(drawn, Unsmear.Extent.ALL));
        Shading little = drawn.drawnOut(drawn.smear().on(0, 0.2, false));
        assertSame(little.smear(), Unsmear.left(little, Unsmear.Extent.HALF));
        assertSame(Smear.NONE, Unsmear.left(little, Unsmear.Extent.ALL));
    }

    @Test
    void missingPixelsStayMissing() {
        Plane frame = noisy(0.008);
        FittedDisk fit = fitted(frame);
        for (int x = 40; x < 60; x++) {
            frame.set(x, 70, Float.NaN);
        }
        Plane restored = Unsmear.of(frame, fit, JUPITER.globe(), 0.008, Unsmear.Extent.ALL, Progress.NONE);
        for (int i = 0; i < frame.data().length; i++) {
            assertEquals(Float.isNaN(frame.data()[i]), Float.isNaN(restored.data()[i]));
        }
    }

    @Test
    void withoutSmearNothingHappens() {
        Plane frame = noisy(0);
        assertSame(
                frame,
                Unsmear.of(
                        frame,
                        fitted(frame).cleared(Unsmear.Extent.ALL),
                        JUPITER.globe(),
                        0.008,
                        Unsmear.Extent.ALL,
                        Progress.NONE));
    }

    private static Plane noisy(double sigma) {
        Plane frame = DRAWN.copy();
        Random dice = new Random(5);
        for (int i = 0; i < frame.data().length; i++) {
            frame.data()[i] += (float) (sigma * dice.nextGaussian());
        }
        return frame;
    }

    private static FittedDisk fitted(Plane frame) {
        return new DiskFit(
                        JUPITER.globe(),
                        true,
                        false,
                        Smear.along(DIRECTION_DEG, OFFSETS_PX),
                        OptionalDouble.of(25),
                        OptionalDouble.empty())
                .fit(frame, Progress.NONE);
    }

    /** Rms of what differs from the sharp picture between two radii, against the brightness of the disk. */
    private static double error(Plane plane, double from, double to) {
        TrueDisk disk = SHARP.disk();
        double mean = 0;
        for (double offset : OFFSETS_PX) {
            mean += offset / OFFSETS_PX.length;
        }
        // The light's middle is where the disk counts as seen.
        assertEquals(0, mean, 0.01);
        double sum = 0;
        int n = 0;
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                double r = Math.hypot(x - disk.x(), y - disk.y()) / disk.equatorialRadiusPx();
                if (r >= from && r < to) {
                    double off = plane.at(x, y) - SHARP.pixels().at(x, y);
                    sum += off * off;
                    n++;
                }
            }
        }
        return Math.sqrt(sum / n);
    }
}
