package org.epochrome.disk.start;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.epochrome.demo.Surfaces;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Portrait;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Smear;
import org.epochrome.job.Progress;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Where fits start in skies that are not even, and where they end, against the true disk of the demo's ray caster. */
class DiskStartTest {
    private static final Portrait JUPITER =
            Portrait.full(Body.JUPITER, 2, 60, 20).shaded(0.9, 3).sunAt(5, 2);
    /** Sky that is left around the disk, pixels. */
    private static final int ROOM = 5;

    private static Plane light;
    private static TrueDisk truth;

    @BeforeAll
    static void photograph() {
        Rendered picture = JUPITER.taken(Surfaces.jupiter(), new Noise(200, 0.2, 3));
        light = picture.pixels();
        truth = picture.disk();
    }

    /** A frame that is hardly larger than the disk, and where the disk lies in it. */
    private static Plane cropped(Plane frame) {
        Plane result = new Plane(2 * (60 + ROOM), 2 * (60 + ROOM));
        for (int y = 0; y < result.height(); y++) {
            for (int x = 0; x < result.width(); x++) {
                result.set(x, y, frame.at(x + left(), y + top()));
            }
        }
        return result;
    }

    private static int left() {
        return (int) Math.round(truth.x()) - 60 - ROOM;
    }

    private static int top() {
        return (int) Math.round(truth.y()) - 60 - ROOM;
    }

    /** A part of the light in a halo as wide as the disk's radius, encoded by a gamma of 2.2. */
    private static Plane haloed(double part) {
        Plane halo = Gaussian.blur(light, 40);
        Plane frame = new Plane(light.width(), light.height());
        for (int i = 0; i < frame.data().length; i++) {
            double mixed = (1 - part) * light.data()[i] + part * halo.data()[i];
            frame.data()[i] = (float) Math.pow(Math.max(0, mixed), 1 / 2.2);
        }
        return cropped(frame);
    }

    private static void bordered(Plane frame, int left, int bottom) {
        for (int y = 0; y < frame.height(); y++) {
            for (int x = 0; x < frame.width(); x++) {
                if (x < left || y >= frame.height() - bottom) {
                    frame.set(x, y, Float.NaN);
                }
            }
        }
    }

    private static FittedDisk fit(Plane frame) {
        return new DiskFit(JUPITER.globe(), true, false, Smear.NONE, OptionalDouble.empty(), OptionalDouble.empty())
                .fit(frame, Progress.NONE);
    }

    private static double offPx(double x, double y) {
        return Math.hypot(x + left() - truth.x(), y + top() - truth.y());
    }

    private static String text(FittedDisk fit) {
        return String.format(
                "off %.2f px of stated %.2f, radius %.2f",
                offPx(fit.disk().x(), fit.disk().y()),
                fit.centreSigmaPx(),
                fit.disk().equatorialRadiusPx());
    }

    /** A halo that fills the frame, with borders across it. Measured: 0.05 px off, as the fit states. */
    @Test
    void aHaloThatFillsTheFrameIsNotTheDisk() {
        Plane frame = haloed(0.4);
        bordered(frame, 2, 3);
        DiskStart start = DiskStart.of(frame);
        // A twelfth of the radius: from there the coarse fit finds home.
        assertTrue(offPx(start.x(), start.y()) < 5, start.toString());
        FittedDisk fit = fit(frame);
        assertTrue(offPx(fit.disk().x(), fit.disk().y()) < 0.15, text(fit));
        assertEquals(60, fit.disk().equatorialRadiusPx(), 0.15, text(fit));
        assertTrue(fit.centreSigmaPx() < 0.15, text(fit));
    }

    /** A sky that brightens by half of the planet's light from one side to the other is a plane, and neither disk nor noise. */
    @Test
    void aSkyThatSlopesIsNeitherDiskNorNoise() {
        Plane frame = cropped(light);
        for (int y = 0; y < frame.height(); y++) {
            for (int x = 0; x < frame.width(); x++) {
                frame.set(x, y, (float) (frame.at(x, y) + 0.4 * x / frame.width()));
            }
        }
        DiskStart start = DiskStart.of(frame);
        assertTrue(offPx(start.x(), start.y()) < 3, start.toString());
        // The portrait's sky noise is 0.2 / 200 of the peak; the light of the blurred limb at this rim adds half as
        // much. The slope
        // alone would add a hundred times as much.
        assertTrue(start.levels().noise() < 2 * 0.2 / 200 * Portrait.GAIN, start.toString());
        FittedDisk fit = fit(frame);
        assertTrue(offPx(fit.disk().x(), fit.disk().y()) < 0.1, text(fit));
    }
}
