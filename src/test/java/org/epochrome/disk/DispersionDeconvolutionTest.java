package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.Random;
import org.epochrome.demo.Surfaces;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.demo.world.Surface;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.job.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A drawn-out invented Jupiter, the mean of pictures that the ray caster took at places along a line, against the sharp one. */
class DispersionDeconvolutionTest {
    private static final double DIRECTION_DEG = 40;
    /** Blue light thins out to one side, as it does in the atmosphere. */
    private static final double[] OFFSETS_PX = {-3.1, -2.7, -2.2, -1.6, -1, -0.3, 0.5, 1.3, 2.2, 3.2, 3.7};

    private static final Surface SURFACE = Surfaces.jupiter();
    private static final Drawn JUPITER = new Drawn(1);
    /** Blurred over so many pixels that detail is restored on coarser ones. */
    private static final Drawn LARGE = new Drawn(3.6);

    /** A planet, sharp and drawn out, on pixels so many times as fine. */
    private static final class Drawn {
        private final double[] offsetsPx;
        private final Portrait portrait;
        private final Rendered sharp;
        private final Plane pixels;

        Drawn(double scale) {
            offsetsPx = Arrays.stream(OFFSETS_PX).map(o -> scale * o).toArray();
            portrait = Portrait.full(Body.JUPITER, 3, scale * 70, 25).shaded(0.9, scale * 4);
            sharp = portrait.taken(SURFACE, Noise.NONE);
            pixels = new Plane(sharp.pixels().width(), sharp.pixels().height());
            double angle = Math.toRadians(DIRECTION_DEG);
            for (double offset : offsetsPx) {
                Plane there = portrait.offset(
                                portrait.offsetX() - offset * Math.sin(angle),
                                portrait.offsetY() - offset * Math.cos(angle))
                        .taken(SURFACE, Noise.NONE)
                        .pixels();
                for (int i = 0; i < pixels.data().length; i++) {
                    pixels.data()[i] += there.data()[i] / offsetsPx.length;
                }
            }
        }

        Plane noisy(double sigma) {
            Plane frame = pixels.copy();
            Random dice = new Random(5);
            for (int i = 0; i < frame.data().length; i++) {
                frame.data()[i] += (float) (sigma * dice.nextGaussian());
            }
            return frame;
        }

        FittedDisk fitted(Plane frame) {
            return new DiskFit(
                            portrait.globe(),
                            true,
                            false,
                            Smear.along(DIRECTION_DEG, offsetsPx),
                            OptionalDouble.of(25),
                            OptionalDouble.empty())
                    .fit(frame, Progress.NONE);
        }

        /** Rms of what differs from the sharp picture between two radii, against the brightness of the disk. */
        double error(Plane plane, double from, double to) {
            TrueDisk disk = sharp.disk();
            double sum = 0;
            int n = 0;
            for (int y = 0; y < plane.height(); y++) {
                for (int x = 0; x < plane.width(); x++) {
                    double r = Math.hypot(x - disk.x(), y - disk.y()) / disk.equatorialRadiusPx();
                    if (r >= from && r < to) {
                        double off = plane.at(x, y) - sharp.pixels().at(x, y);
                        sum += off * off;
                        n++;
                    }
                }
            }
            return Math.sqrt(sum / n);
        }
    }

    /** The light's middle is where the disk counts as seen. */
    @Test
    void theSceneIsDrawnOutAboutItsMiddle() {
        assertEquals(0, Arrays.stream(OFFSETS_PX).average().orElseThrow(), 1e-9);
    }

    /**
     * Errors, as parts of the error before, of detail and of the limb. Measured wholly: 0.17 and 0.25 without noise, 0.31 and 0.67 at
     * a signal to noise of 200, 0.52 and 0.87 at 100, 0.96 and 1.01 at 20; by half: 0.36 and 0.35, 0.43 and 0.67, 0.60 and 0.87,
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
    void sharpensDetailAndSparesTheLimb(
            DispersionDeconvolution.Extent extent, double noise, double mostDetail, double mostLimb) {
        assertSharpened(JUPITER, extent, noise, mostDetail, mostLimb);
    }

    /** Measured 0.177 and 0.248, on the frame's own pixels 0.176 and 0.248; by half and with noise 0.61 and 0.85. */
    @ParameterizedTest
    @CsvSource({"ALL, 0, 0.25, 0.4", "HALF, 0.01, 0.8, 1"})
    void onCoarserPixelsToo(DispersionDeconvolution.Extent extent, double noise, double mostDetail, double mostLimb) {
        assertSharpened(LARGE, extent, noise, mostDetail, mostLimb);
    }

    private static void assertSharpened(
            Drawn scene, DispersionDeconvolution.Extent extent, double noise, double mostDetail, double mostLimb) {
        Plane frame = scene.noisy(noise);
        Plane restored = DispersionDeconvolution.of(
                frame, scene.fitted(frame), scene.portrait.globe(), noise, extent, Progress.NONE);
        double detail = scene.error(restored, 0, 0.8) / scene.error(frame, 0, 0.8);
        double limb = scene.error(restored, 0.9, 1.1) / scene.error(frame, 0.9, 1.1);
        assertTrue(detail < mostDetail, "detail error is " + detail + " of what it was");
        assertTrue(limb < mostLimb, "limb error is " + limb + " of what it was");
    }

    @Test
    void halfOfALopsidedSmearIsLeftAndLiesEven() {
        Shading drawn = new Shading(1, 2, Smear.along(DIRECTION_DEG, OFFSETS_PX));
        Smear left = DispersionDeconvolution.left(drawn, DispersionDeconvolution.Extent.HALF);
        assertEquals(0.5 * drawn.smear().lengthPx(), left.lengthPx(), 1e-9);
        assertEquals(0, left.leanPx(1), 1e-9);
        assertSame(Smear.NONE, DispersionDeconvolution.left(drawn, DispersionDeconvolution.Extent.ALL));
        Shading little = drawn.smearedBy(drawn.smear().on(0, 0.2, false));
        assertSame(little.smear(), DispersionDeconvolution.left(little, DispersionDeconvolution.Extent.HALF));
        assertSame(Smear.NONE, DispersionDeconvolution.left(little, DispersionDeconvolution.Extent.ALL));
    }

    @Test
    void missingPixelsStayMissing() {
        Plane frame = JUPITER.noisy(0.008);
        FittedDisk fit = JUPITER.fitted(frame);
        for (int x = 40; x < 60; x++) {
            frame.set(x, 70, Float.NaN);
        }
        Plane restored = DispersionDeconvolution.of(
                frame, fit, JUPITER.portrait.globe(), 0.008, DispersionDeconvolution.Extent.ALL, Progress.NONE);
        for (int i = 0; i < frame.data().length; i++) {
            assertEquals(Float.isNaN(frame.data()[i]), Float.isNaN(restored.data()[i]));
        }
    }

    @Test
    void withoutSmearNothingHappens() {
        Plane frame = JUPITER.noisy(0);
        assertSame(
                frame,
                DispersionDeconvolution.of(
                        frame,
                        DispersionDeconvolution.fit(JUPITER.fitted(frame), DispersionDeconvolution.Extent.ALL),
                        JUPITER.portrait.globe(),
                        0.008,
                        DispersionDeconvolution.Extent.ALL,
                        Progress.NONE));
    }
}
