package org.epochrome.disk.start;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.epochrome.demo.Surfaces;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Portrait;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The steepest edge against the true disks of the demo's ray caster, which shares no geometry with it. */
class LimbEdgeTest {
    private static final Portrait JUPITER =
            Portrait.full(Body.JUPITER, 2, 60, 20).shaded(0.9, 3).sunAt(5, 2);

    private static final Levels LEVELS = new Levels(Portrait.SKY, 0.001, Portrait.GAIN);

    private static Disk near(TrueDisk truth, double right, double down, double grown) {
        return new Disk(
                truth.x() + right,
                truth.y() + down,
                grown * truth.equatorialRadiusPx(),
                truth.northAngleDeg(),
                truth.mirrored());
    }

    private static void assertFound(TrueDisk truth, Optional<LimbEdge> found, double px) {
        assertTrue(found.isPresent());
        Disk disk = found.get().disk();
        assertEquals(0, Math.hypot(disk.x() - truth.x(), disk.y() - truth.y()), px, "centre " + found);
        // The steepest place of a blurred, darkened limb lies inside it by less than the blur's standard deviation, 1.3
        // px.
        assertEquals(truth.equatorialRadiusPx(), disk.equatorialRadiusPx(), 1.3, "radius " + found);
    }

    /** From a seventh of the radius off, as a fit was that went astray. Measured: 0.08 to 0.3 px. */
    @ParameterizedTest
    @CsvSource({"8.5, 0, 1", "-6, 6, 1", "0, -8.5, 1.25", "3, 3, 0.8"})
    void findsTheDiskFromAfar(double right, double down, double grown) {
        Rendered picture = JUPITER.taken(Surfaces.jupiter(), new Noise(100, 0.2, 3));
        TrueDisk truth = picture.disk();
        assertFound(
                truth,
                LimbEdge.of(picture.pixels(), LEVELS, JUPITER.globe(), near(truth, right, down, grown), false),
                0.01 * truth.equatorialRadiusPx());
    }

    /** Half of the light in a halo as wide as the disk, encoded by a gamma of 2.2, two borders close to the limb. */
    @Test
    void isNotLedAstrayByAHaloAndBorders() {
        Rendered picture = JUPITER.taken(Surfaces.jupiter(), new Noise(100, 0.2, 3));
        Plane light = picture.pixels();
        Plane halo = Gaussian.blur(light, 30);
        Plane frame = new Plane(light.width(), light.height());
        int border = (int) (picture.disk().x() - 63);
        for (int y = 0; y < frame.height(); y++) {
            for (int x = 0; x < frame.width(); x++) {
                double mixed = Math.max(0, 0.5 * light.at(x, y) + 0.5 * halo.at(x, y));
                frame.set(x, y, x < border || y < border ? Float.NaN : (float) Math.pow(mixed, 1 / 2.2));
            }
        }
        assertFound(
                picture.disk(),
                LimbEdge.of(
                        frame, DiskStart.of(frame).levels(), JUPITER.globe(), near(picture.disk(), 5, -5, 1.1), false),
                0.6);
    }

    /** A half-lit disk shows half of its outline, and its terminator is none. */
    @Test
    void looksAtTheLitSideOnly() {
        Portrait venus = Portrait.full(Body.VENUS, 0, 60, 0).shaded(0.9, 3).sunAt(80, 0);
        Rendered picture = venus.even(new Noise(100, 0.2, 3));
        assertFound(
                picture.disk(),
                LimbEdge.of(picture.pixels(), LEVELS, venus.globe(), near(picture.disk(), 4, 4, 1), false),
                1.3);
    }

    @Test
    void isSilentAboutAnEmptyFrame() {
        Plane empty = new Plane(200, 200);
        Disk disk = new Disk(100, 100, 60, 0, false);
        Optional<LimbEdge> found = LimbEdge.of(empty, LEVELS, JUPITER.globe(), disk, false);
        assertTrue(found.isEmpty(), found.toString());
    }
}
