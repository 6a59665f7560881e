package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.colour.finish.Look;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.write.PictureWriter;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.product.Finishing;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.report.JsonReport;
import org.epochrome.session.schedule.Memory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Sessions of mixed material on scenes of the demo's ray-caster: registration within 0.05 pixel of the output at a signal
 * to noise of 100 or more.
 */
@Tag("session")
class MixedNightTest {
    private static final double REGISTERED_PX = 0.05;

    @TempDir
    private Path folder;

    private static Shot shot(Band band, double middleS, Camera camera) {
        return InventedNight.shot(band, middleS, camera, 120, (long) middleS + 9);
    }

    /** A camera of another grid and scale, turned against celestial north like the usual one or by some degrees more. */
    private static Camera camera(int side, double scale, double turnedDeg, boolean mirrored) {
        return Camera.withNorthAngle(
                side,
                side,
                scale,
                InventedNight.NORTH + turnedDeg,
                mirrored,
                InventedNight.aspect(InventedNight.EPOCH));
    }

    private static void assertRegistered(InventedNight night, Combination c) {
        for (FrameResult f : c.frames()) {
            assertTrue(
                    night.offPx(c, f) < REGISTERED_PX,
                    f.exposure().frame().head().file().getFileName() + " "
                            + f.exposure().band().name() + " off by " + night.offPx(c, f));
        }
    }

    /** Blue binned 2 x 2, red through another focal length, in three formats and depths, a second green of floats. */
    @Test
    void scalesSizesAndFormatsMayDiffer() {
        BandSetting halfAsManyPixels = new BandSetting(0.93, 1.3, 0.8);
        InventedNight night = new InventedNight(
                        folder, Surface.invented(Body.JUPITER, 21), Map.of("B", halfAsManyPixels))
                .add("r.tif", shot(Band.R, -200, camera(210, 0.29, 0, false).offsetBy(2.2, -1.7)))
                .add("g1.png", shot(Band.G, 5, InventedNight.camera().offsetBy(0.4, 1.1)))
                .addFloats("g2.fits", shot(Band.G, 100, InventedNight.camera().offsetBy(-2.4, 0.6)))
                .add(
                        "b.fits",
                        shot(
                                Band.B,
                                200,
                                camera(120, 2 * InventedNight.SCALE, 0, false).offsetBy(1.3, 0.7)));
        Combination c = InventedNight.combine(night.recipe());
        assertRegistered(night, c);
        assertEquals(InventedNight.SIDE, c.cube().width());
        for (FrameResult f : c.frames()) { // a disk of 33 pixels is known to 0.3 per cent, and says so
            assertEquals(
                    night.disk(f).equatorialRadiusPx(),
                    f.disk().equatorialRadiusPx(),
                    3 * f.limb().radiusSigmaPx(),
                    f.exposure().band().name());
            assertTrue(f.limb().radiusSigmaPx() < 0.13);
        }

        // With memory for one plane and seven rows it is the same, bit by bit.
        long plane = 4L * 210 * 210;
        Combination frugal = new Combiner(night.recipe(), new Memory(plane, 2 * 4 * 2 * InventedNight.SIDE * 7))
                .combine(Progress.NONE);
        for (int k = 0; k < 3; k++) {
            assertArrayEquals(
                    c.cube().planes().get(k).data(),
                    frugal.cube().planes().get(k).data());
        }
        assertEquals(JsonReport.of(c, Look.DEFAULT, "test"), JsonReport.of(frugal, Look.DEFAULT, "test"));
    }

    /** A frame through a star diagonal among others without. */
    @Test
    void aMirroredFrameIsFound() {
        InventedNight night = new InventedNight(folder, Surface.invented(Body.JUPITER, 22), Map.of())
                .add("r.fits", shot(Band.R, -300, camera(InventedNight.SIDE, InventedNight.SCALE, -32, true)))
                .add("g.fits", shot(Band.G, 5, InventedNight.camera().offsetBy(0.4, 1.1)))
                .add("b.fits", shot(Band.B, 300, InventedNight.camera().offsetBy(1.3, 0.7)));
        Recipe recipe = night.recipe(Mirroring.AUTO, Mount.EQUATORIAL);
        Combination c = InventedNight.combine(recipe);
        for (FrameResult f : c.frames()) {
            TrueDisk truth = night.disk(f);
            assertEquals(
                    truth.mirrored(), f.disk().mirrored(), f.exposure().band().name());
        }
        assertTrue(
                c.warnings().stream().anyMatch(w -> w.toString().startsWith("r.fits is mirrored")),
                c.warnings().toString());
        assertRegistered(night, c);
    }

    /** Forty minutes on an alt-azimuth mount, on which this field turns by several degrees. */
    @Test
    void theParallacticAngleTurnsTheFieldOfAnAltazMount() {
        InventedNight night = altaz();
        Combination c = InventedNight.combine(night.recipe(Mirroring.NO, Mount.ALTAZ));
        assertRegistered(night, c);
        assertFalse(
                c.warnings().stream().anyMatch(w -> w.toString().contains("--mount")),
                c.warnings().toString());
        Combination wrong = InventedNight.combine(night.recipe());
        assertTrue(
                wrong.warnings().stream().anyMatch(w -> w.toString().contains("use --mount altaz")),
                wrong.warnings().toString());
    }

    private InventedNight altaz() {
        InventedNight night = new InventedNight(folder);
        double reference = zenith(5);
        int k = 0;
        for (double t : new double[] {-1200, -600, 5, 600, 1200}) {
            Band band = List.of(Band.R, Band.G, Band.G, Band.G, Band.B).get(k++);
            double turned = reference - zenith(t);
            night.add("a" + k + ".fits", shot(band, t, camera(InventedNight.SIDE, InventedNight.SCALE, turned, false)));
        }
        return night;
    }

    private static double zenith(double middleS) {
        return InventedNight.aspect(InventedNight.EPOCH.plusMillis((long) (1000 * middleS)))
                .horizontal()
                .orElseThrow()
                .parallacticAngleDeg();
    }

    /** Infrared, red and green shown as red, green and blue. */
    @Test
    void anyBandsMakeThePicture() {
        InventedNight night = new InventedNight(folder)
                .add("ir.fits", shot(Band.IR, -200, InventedNight.camera().offsetBy(2.2, -1.7)))
                .add("r.fits", shot(Band.R, -100, InventedNight.camera().offsetBy(-1.2, 0.3)))
                .add("g.fits", shot(Band.G, 5, InventedNight.camera().offsetBy(0.4, 1.1)))
                .add("b.fits", shot(Band.B, 200, InventedNight.camera().offsetBy(1.3, 0.7)));
        Combination natural = InventedNight.combine(night.recipe());
        assertTrue(natural.warnings().stream().anyMatch(w -> w.toString().startsWith("Frames in IR were fitted")));
        Combination c = InventedNight.combine(night.recipe().with(new Assignment("IR", "R", "G", Optional.empty())));
        assertRegistered(night, c);
        assertEquals(4, c.frames().size());
        assertArrayEquals(natural.cube().red().data(), c.cube().green().data());
        assertEquals(List.of("IR", "R", "G"), new ArrayList<>(c.coverage().keySet()));
        assertTrue(c.warnings().stream().anyMatch(w -> w.toString().startsWith("Frames in B were fitted")));
        assertThrows(
                SessionRefused.class,
                () -> InventedNight.combine(night.recipe().with(new Assignment("CH4", "R", "G", Optional.empty()))));
    }

    /** Sharp frames without a filter bring their detail into blurred, noisy colours. */
    @Test
    void theBrightnessComesFromClearFrames() {
        BandSetting blurred = new BandSetting(0.93, 4.2, 0.8);
        InventedNight night = new InventedNight(folder, Map.of("R", blurred, "G", blurred, "B", blurred));
        Shot clear = InventedNight.shot(Band.L, 0, InventedNight.camera().offsetBy(0.2, 0.3), 200, 4);
        night.add("l.fits", clear)
                .add("r.fits", InventedNight.shot(Band.R, -100, InventedNight.camera(), 40, 1))
                .add(
                        "g.fits",
                        InventedNight.shot(Band.G, 40, InventedNight.camera().offsetBy(0.4, 1.1), 40, 2))
                .add(
                        "b.fits",
                        InventedNight.shot(Band.B, 130, InventedNight.camera().offsetBy(1.3, 0.7), 40, 3));
        Combination with = InventedNight.combine(night.recipe());
        Combination without =
                InventedNight.combine(night.recipe().with(new Assignment("R", "G", "B", Optional.empty())));
        assertEquals(Optional.of("L"), with.recipe().assignment().luminance());
        Plane truth = night.truth(Band.L, clear);
        double gained = error(with.seen(), truth, night.disk(with.frames().get(0)));
        double plain = error(without.cube(), truth, night.disk(without.frames().get(0)));
        assertTrue(gained < 0.5 * plain, gained + " with, " + plain + " without");
        // The brightness belongs to the finished picture: the cube holds the bands alone.
        for (int k = 0; k < 3; k++) {
            assertArrayEquals(
                    without.cube().planes().get(k).data(),
                    with.cube().planes().get(k).data());
        }
        otherBandsAreBalancedByTheDisk(without);
    }

    /** Published albedos are those of red, green and blue: for other bands the whole disk is grey, as by {@link White#DISK}. */
    private static void otherBandsAreBalancedByTheDisk(Combination c) {
        Combination other = new Combination(
                c.recipe().with(new Assignment("B", "G", "R", Optional.empty())),
                c.epoch(),
                c.aspect(),
                c.cube(),
                c.brightness(),
                c.globe(),
                c.disk(),
                c.frames(),
                c.moons(),
                c.coverage(),
                c.quality(),
                c.verdict(),
                c.warnings());
        Look grey = new Look(
                WhiteBalance.of(White.DISK), Look.DEFAULT.sharpening(), Look.DEFAULT.tone(), Look.DEFAULT.framing());
        assertEquals(Finishing.gains(c, grey), Finishing.gains(other, Look.DEFAULT));
        assertNotEquals(Finishing.gains(c, Look.DEFAULT), Finishing.gains(other, Look.DEFAULT));
    }

    private static double error(ColourCube cube, Plane truth, TrueDisk disk) {
        return PictureMatch.of(cube.green(), truth, disk).error();
    }

    /** Colour cameras: planes that dispersion moves apart are laid on each other, three frames are brought to one epoch. */
    @Test
    void colourFramesAreSplit() {
        InventedNight night = new InventedNight(folder);
        double[][] apart = {{0.35, 0.9}, {0, 0}, {-0.6, -1.5}};
        List<String> names = List.of("one.png", "two.tif", "three.fits");
        List<Map<String, TrueDisk>> truths = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            List<Plane> planes = new ArrayList<>();
            Map<String, TrueDisk> truth = new HashMap<>();
            Shot middle = null;
            for (int p = 0; p < 3; p++) {
                Band band = List.of(Band.R, Band.G, Band.B).get(p);
                Camera there = InventedNight.camera().offsetBy(0.8 * k + apart[p][0], apart[p][1] - 0.5 * k);
                Shot shot = InventedNight.shot(band, 240 * (k - 1), there, 120, 10 * k + p);
                Rendered picture = night.scene().photograph(shot);
                planes.add(picture.pixels());
                truth.put(band.name(), picture.disk());
                middle = p == 1 ? shot : middle;
            }
            truths.add(truth);
            Path file = folder.resolve(names.get(k));
            if (k == 2) {
                FitsWriter.write(file, planes, List.of(), List.of(), true);
            } else {
                PictureWriter.write(file, planes, new PictureWriter.Caption("test", Optional.empty(), "test"), true);
            }
            night.known(names.get(k), Optional.empty(), middle, truth.get("G"));
        }
        Combination c = InventedNight.combine(night.recipe());
        assertEquals(9, c.frames().size());
        for (FrameResult f : c.frames()) {
            int k = names.indexOf(
                    f.exposure().frame().head().file().getFileName().toString());
            TrueDisk truth = truths.get(k).get(f.exposure().band().name());
            double off = Math.hypot(f.disk().x() - truth.x(), f.disk().y() - truth.y());
            assertTrue(
                    off < REGISTERED_PX,
                    names.get(k) + " " + f.exposure().band().name() + " off by " + off);
        }
        assertEquals(3, c.coverage().get("B").frames().at((int) c.disk().x(), (int)
                c.disk().y()));
    }
}
