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
     * Measured: detail 0.37, limb 0.31 of the error before without noise; at a signal to noise of 200, 0.46 and 0.76. At 100
     * (0.65, 1.10) what is wrong at the limb is the noise itself, which gets a tenth stronger.
     */
    @Test
    void sharpensDetailAndSparesTheLimb() {
        for (double noise : new double[] {0, 0.004}) {
            Plane frame = noisy(noise);
            Plane restored = Unsmear.of(frame, fitted(frame), JUPITER.globe(), Progress.NONE);
            double detail = error(restored, 0, 0.8) / error(frame, 0, 0.8);
            double limb = error(restored, 0.9, 1.1) / error(frame, 0.9, 1.1);
            // Asked: a fifth better, and no worse at the limb.
            assertTrue(detail < 0.8, "detail error is " + detail + " of what it was");
            assertTrue(limb < 1, "limb error is " + limb + " of what it was");
        }
    }

    @Test
    void missingPixelsStayMissing() {
        Plane frame = noisy(0.008);
        FittedDisk fit = fitted(frame);
        for (int x = 40; x < 60; x++) {
            frame.set(x, 70, Float.NaN);
        }
        Plane restored = Unsmear.of(frame, fit, JUPITER.globe(), Progress.NONE);
        for (int i = 0; i < frame.data().length; i++) {
            assertEquals(Float.isNaN(frame.data()[i]), Float.isNaN(restored.data()[i]));
        }
    }

    @Test
    void withoutSmearNothingHappens() {
        Plane frame = noisy(0);
        assertSame(frame, Unsmear.of(frame, fitted(frame).unsmeared(), JUPITER.globe(), Progress.NONE));
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
