package org.epochrome.colour.finish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.epochrome.colour.ColourCube;
import org.epochrome.demo.Surfaces;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.Scene;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.RingLight;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.Wings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SharpenerTest {
    private static final int SIDE = 200;
    private static final double BLUR = 2;
    private static final View FACE = new View(new Globe(1, 0, 1, 0, 0), new Disk(99.3, 100.4, 70, 0, false));

    @Test
    void strengthNoughtChangesNothing() {
        ColourCube cube = grey(globe(0.5, BLUR, 70, (x, y) -> 1));
        assertSame(cube, Sharpener.sharpened(cube, FACE, bands(0.5, BLUR), Sharpening.ofStrength(0)));
    }

    /** No jump where it sets in. */
    @Test
    void littleStrengthChangesLittle() {
        ColourCube cube = grey(globe(0.7, BLUR, 70, (x, y) -> x < 90 ? 1 : 0.8));
        ColourCube result = Sharpener.sharpened(cube, FACE, bands(0.7, BLUR), Sharpening.ofStrength(1e-4));
        for (int i = 0; i < SIDE * SIDE; i++) {
            assertEquals(cube.green().data()[i], result.green().data()[i], 5e-6);
        }
    }

    /**
     * A flat disk on black sky is a step edge. Its limb gets steeper and shoots over by less than 2 % of the step, even if
     * the fit missed blur and radius by more than a fit misses them.
     */
    @ParameterizedTest
    @CsvSource({"2,70,0.5", "2.2,70,0.5", "1.8,70,0.5", "2,70.2,0.5", "2,69.8,0.5", "2,70,1"})
    void limbDoesNotRing(double blur, double radius, double strength) {
        Plane before = globe(0.5, blur, radius, (x, y) -> 1);
        Plane after = Sharpener.sharpened(grey(before), FACE, bands(0.5, BLUR), Sharpening.ofStrength(strength))
                .green();
        float most = 0;
        float least = 1;
        double steepest = 0;
        double steepestBefore = 0;
        for (int y = 0; y < SIDE; y++) {
            for (int x = 1; x < SIDE; x++) {
                most = Math.max(most, after.at(x, y));
                least = Math.min(least, after.at(x, y));
                steepest = Math.max(steepest, Math.abs(after.at(x, y) - after.at(x - 1, y)));
                steepestBefore = Math.max(steepestBefore, Math.abs(before.at(x, y) - before.at(x - 1, y)));
            }
        }
        assertTrue(most < 1.02, "overshoot to " + most);
        assertTrue(least > -0.02, "undershoot to " + least);
        assertTrue(steepest > 1.2 * steepestBefore, "steeper by only " + steepest / steepestBefore);
    }

    /** A steep coast on the globe: 30 % of the brightness. Overshoot in parts of the brightness. */
    @Test
    void coastsDoNotRing() {
        Plane before = globe(0.5, BLUR, 70, (x, y) -> x < 100 ? 1 : 0.7);
        Plane after = Sharpener.sharpened(grey(before), FACE, bands(0.5, BLUR), Sharpening.DEFAULT)
                .green();
        float most = 0;
        float least = 1;
        for (int y = 80; y < 120; y++) {
            for (int x = 60; x < 140; x++) {
                most = Math.max(most, after.at(x, y));
                least = Math.min(least, after.at(x, y));
            }
        }
        assertTrue(most < 1.02, "overshoot to " + most);
        assertTrue(least > 0.68, "undershoot to " + least);
        assertTrue(after.at(98, 100) - after.at(102, 100) > 1.1 * (before.at(98, 100) - before.at(102, 100)));
    }

    /** Spots that red and blue show in opposite sense, so that luminance hardly does: only their own detail brings them out. */
    @Test
    void eachBandIsStrengthenedByItsOwnDetailIfAsked() {
        double blueToRed = 0.2126 / 0.0722;
        Plane red = globe(0.5, BLUR, 70, (x, y) -> 1 + 0.05 * Math.sin(x / 2.5));
        Plane green = globe(0.5, BLUR, 70, (x, y) -> 1);
        Plane blue = globe(0.5, BLUR, 70, (x, y) -> 1 - 0.05 * blueToRed * Math.sin(x / 2.5));
        ColourCube cube = new ColourCube(red, green, blue);
        Sharpening own = new Sharpening(
                0.3, 15, 0.004, 0.3, OptionalDouble.empty(), OptionalDouble.empty(), 1, 3, Sharpening.DetailOf.BANDS);
        ColourCube common = Sharpener.sharpened(cube, FACE, bands(0.5, BLUR), Sharpening.DEFAULT);
        ColourCube each = Sharpener.sharpened(cube, FACE, bands(0.5, BLUR), own);
        assertTrue(deviation(common.red()) < 1.05 * deviation(red), "common " + deviation(common.red()));
        assertTrue(deviation(each.red()) > 1.15 * deviation(red), "own " + deviation(each.red()) / deviation(red));
        assertTrue(deviation(each.blue()) > 1.15 * deviation(blue));
    }

    @Test
    void aScaleInArcsecondsIsTheSameInPixels() {
        assertEquals(
                Sharpening.DEFAULT.peakingAt(4),
                Sharpening.DEFAULT.peakingAtArcsec(0.8).onPixels(0.2));
        assertEquals(
                Sharpening.DEFAULT.peakingAt(4), Sharpening.DEFAULT.peakingAt(4).onPixels(0.2));
    }

    /** Grey pictures come out alike both ways. */
    @Test
    void greyIsTheSameByEachBand() {
        ColourCube cube = grey(globe(0.5, BLUR, 70, (x, y) -> 1 + 0.1 * Math.sin(x / 3) * Math.cos(y / 4)));
        Sharpening own = new Sharpening(
                0.3, 15, 0.004, 0.3, OptionalDouble.empty(), OptionalDouble.empty(), 1, 3, Sharpening.DetailOf.BANDS);
        ColourCube common = Sharpener.sharpened(cube, FACE, bands(0.5, BLUR), Sharpening.DEFAULT);
        ColourCube each = Sharpener.sharpened(cube, FACE, bands(0.5, BLUR), own);
        for (int i = 0; i < SIDE * SIDE; i++) {
            assertEquals(common.red().data()[i], each.red().data()[i], 1e-4);
        }
    }

    /** In flat parts noise grows by less than a fifth by default, and by less than a half at full strength. */
    @ParameterizedTest
    @CsvSource({"0.5,1.2", "1,1.5"})
    void flatPartsStayQuiet(double strength, double factor) {
        Random random = new Random(11);
        Plane plane = globe(0.5, BLUR, 70, (x, y) -> 1);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] += (float) (0.01 * random.nextGaussian());
        }
        Plane after = Sharpener.sharpened(grey(plane), FACE, bands(0.5, BLUR), Sharpening.ofStrength(strength))
                .green();
        double grown = deviation(after) / deviation(plane);
        assertTrue(grown < factor, "noise grew by " + grown);
    }

    /** An invented Jupiter by the ray-caster: blurred and noisy against the same without any blur. */
    @Test
    void comesCloserToTheSharperTruth() {
        Aspect aspect = Ephemeris.aspect(Body.JUPITER, Instant.parse("2024-12-18T19:24:30Z"), Optional.empty());
        Camera camera = Camera.withNorthAngle(SIDE, SIDE, aspect.equatorialDiameterArcsec() / 160, 11, false, aspect);
        Rendered truth = rendered(aspect, camera, 0);
        Rendered blurred = rendered(aspect, camera, 2.3548 * BLUR);
        Plane seen = blurred.pixels().copy();
        Random random = new Random(5);
        for (int i = 0; i < seen.data().length; i++) {
            seen.data()[i] += (float) (0.003 * random.nextGaussian());
        }
        Disk disk = new Disk(
                truth.disk().x(),
                truth.disk().y(),
                truth.disk().equatorialRadiusPx(),
                truth.disk().northAngleDeg(),
                false);
        View view = new View(Globe.of(aspect), disk);
        double before = error(seen, truth.pixels(), view);
        double last = before;
        for (double strength : new double[] {0.5, 1}) {
            Plane sharp = Sharpener.sharpened(grey(seen), view, bands(0.9, BLUR), Sharpening.ofStrength(strength))
                    .green();
            double after = error(sharp, truth.pixels(), view);
            assertTrue(after < 0.9 * last, "detail error from " + last + " to " + after);
            last = after;
        }
        assertTrue(last < 0.75 * before, "detail error from " + before + " to " + last);
    }

    /**
     * Wings take contrast from detail narrower than themselves: by 0.2 of the light spread with a sigma of 12 px the ripple of the markings, 20 px
     * long, keeps (1 - 0.2) / (1 - 0.2 T) with T = exp(-2 pi^2 12^2 / 20^2) = 0.0008. Restored, it has what the sharpener makes of the same
     * markings without wings.
     */
    @Test
    void wingsTakenOffLeaveWhatThereWasWithoutThem() {
        Wings wings = Wings.of(new double[] {12}, new double[] {0.2});
        Plane plain = globe(0.7, BLUR, 70, (x, y) -> 1 + 0.1 * Math.cos(2 * Math.PI * x / 20));
        Plane winged = wings.of(plain);
        assertEquals(0.8, ripple(winged) / ripple(plain), 0.01);
        // No gain of scales, and no threshold: without noise, the ripple itself would pass for it.
        Sharpening settings = new Sharpening(
                0.3, 15, 0.004, 0, OptionalDouble.empty(), OptionalDouble.empty(), 1, 0, Sharpening.DetailOf.LUMINANCE);
        Plane without = Sharpener.sharpened(grey(plain), FACE, bands(0.7, BLUR), settings)
                .green();
        BandLight light = new BandLight(new Shading(0.7, 0, BLUR, Smear.NONE, wings), RingLight.NONE);
        Plane with = Sharpener.sharpened(grey(winged), FACE, List.of(light, light, light), settings)
                .green();
        assertEquals(ripple(without), ripple(with), 0.02 * ripple(without));
    }

    /** Strength of the ripple against the light around it, in the middle of the disk. */
    private static double ripple(Plane plane) {
        double wave = 0;
        double sum = 0;
        for (int y = 80; y < 120; y++) {
            for (int x = 80; x < 120; x++) {
                wave += 2 * plane.at(x, y) * Math.cos(2 * Math.PI * x / 20);
                sum += plane.at(x, y);
            }
        }
        return wave / sum;
    }

    @Test
    void refusesWhatMakesNoSense() {
        assertThrows(IllegalArgumentException.class, () -> Sharpening.ofStrength(1.1));
        assertThrows(IllegalArgumentException.class, () -> Sharpening.ofStrength(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Sharpening.DEFAULT.peakingAt(0));
    }

    private static Rendered rendered(Aspect aspect, Camera camera, double fwhmPx) {
        return new Scene(Surfaces.jupiter(), at -> aspect, Map.of("G", new BandSetting(0.9, fwhmPx, 1)), 0)
                .truth(Band.G, camera, Instant.parse("2024-12-18T19:24:30Z"));
    }

    private static double error(Plane plane, Plane truth, View view) {
        double sum = 0;
        int n = 0;
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                if (view.ellipticRadius(view.pole(x, y), view.side(x, y)) < 0.8) {
                    double off = plane.at(x, y) / truth.at(x, y) - 1;
                    sum += off * off;
                    n++;
                }
            }
        }
        return Math.sqrt(sum / n);
    }

    private static double deviation(Plane plane) {
        double sum = 0;
        double squares = 0;
        int n = 0;
        for (int y = 60; y < 140; y++) {
            for (int x = 60; x < 140; x++) {
                sum += plane.at(x, y);
                squares += plane.at(x, y) * plane.at(x, y);
                n++;
            }
        }
        return Math.sqrt(squares / n - sum / n * sum / n);
    }

    /** A globe with markings, blurred after them, made from the sharp one. */
    /** Only the surroundings of a planet are looked at: more sky around it changes neither the planet nor the sky. */
    @Test
    void moreSkyChangesNothing() {
        int more = 150;
        Plane small = globe(0.7, BLUR, 50, (x, y) -> 1 + 0.2 * Math.sin(0.4 * x) * Math.cos(0.3 * y));
        Plane large = new Plane(SIDE + 2 * more, SIDE + 2 * more);
        for (int y = 0; y < large.height(); y++) {
            for (int x = 0; x < large.width(); x++) {
                boolean inside = Math.min(x, y) >= more && Math.max(x, y) < more + SIDE;
                large.set(x, y, inside ? small.at(x - more, y - more) : 0);
            }
        }
        View view = new View(FACE.globe(), FACE.disk().withRadius(50));
        View moved = new View(FACE.globe(), view.disk().movedBy(more, more));
        Sharpening settings = Sharpening.ofStrength(1);
        Plane alone = Sharpener.sharpened(grey(small), view, bands(0.7, BLUR), settings)
                .green();
        Plane amid = Sharpener.sharpened(grey(large), moved, bands(0.7, BLUR), settings)
                .green();
        for (int y = 0; y < large.height(); y++) {
            for (int x = 0; x < large.width(); x++) {
                boolean inside = Math.min(x, y) >= more && Math.max(x, y) < more + SIDE;
                // A level of 16 bits is 1.5e-5.
                assertEquals(inside ? alone.at(x - more, y - more) : 0, amid.at(x, y), 1e-5, x + " " + y);
            }
        }
    }

    private static Plane globe(double minnaert, double blurPx, double radius, DoubleBinaryOperator markings) {
        View view = new View(FACE.globe(), FACE.disk().withRadius(radius));
        Plane sharp = new Shading(minnaert, 0, Smear.NONE).picture(view, SIDE, SIDE);
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                sharp.set(x, y, (float) (sharp.at(x, y) * markings.applyAsDouble(x, y)));
            }
        }
        return Gaussian.blur(sharp, blurPx);
    }

    private static List<BandLight> bands(double minnaert, double blurPx) {
        BandLight light = new BandLight(new Shading(minnaert, blurPx, Smear.NONE), RingLight.NONE);
        return List.of(light, light, light);
    }

    private static ColourCube grey(Plane plane) {
        return new ColourCube(plane, plane, plane);
    }
}
