package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.epochrome.colour.Coverage;
import org.epochrome.demo.Camera;
import org.epochrome.demo.Shot;
import org.epochrome.image.Band;
import org.epochrome.image.Gaussian;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.Combination.FrameResult;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Merging many frames of one band, through the whole path, on scenes of the demo's ray-caster. */
class MergingTest {
    private static final double[] EVEN = {60, 60, 60, 60, 60, 60, 60, 60, 60};
    private static final double[] UNEQUAL = {120, 40, 60, 30, 90, 50, 40, 100, 70};

    @TempDir
    private static Path folder;

    private static Combination clean;

    @BeforeAll
    static void withoutNoise() {
        clean = InventedNight.combine(coloursAlone(night("clean", new double[9])));
    }

    private static Shot green(int k, double snr) {
        Random random = new Random(11 + k);
        Camera camera = InventedNight.camera().offsetBy(3 * random.nextDouble(), 3 * random.nextDouble());
        return InventedNight.shot(Band.G, 40 * (k - 4) + 3, camera, snr, 100 + k);
    }

    /** Nine green frames with noise of their own, one red and one blue. */
    private static InventedNight night(String name, double[] snr) {
        InventedNight night = new InventedNight(folder(name), 7);
        for (int k = 0; k < snr.length; k++) {
            night.add("g" + k + ".fits", green(k, snr[k]));
        }
        return night.add("r.fits", InventedNight.shot(Band.R, -190, InventedNight.camera(), 100, 1))
                .add("b.fits", InventedNight.shot(Band.B, 190, InventedNight.camera(), 100, 2));
    }

    /** Clear frames only lend their pixels as those of the output. */
    private static Recipe coloursAlone(InventedNight night) {
        return night.recipe().assigned(new Assignment("R", "G", "B", Optional.empty()));
    }

    private static Path folder(String name) {
        Path path = folder.resolve(name);
        assertTrue(path.toFile().mkdir());
        return path;
    }

    /** Relative scatter of what differs between a picture and the same without noise, in the inner disk. */
    private static double noise(Plane picture, Plane clean) {
        double sum = 0;
        double square = 0;
        int n = 0;
        for (int y = 60; y < 112; y++) {
            for (int x = 55; x < 118; x++) {
                double ratio = picture.at(x, y) / clean.at(x, y);
                sum += ratio;
                square += ratio * ratio;
                n++;
            }
        }
        double mean = sum / n;
        return Math.sqrt(square / n - mean * mean) / mean;
    }

    /** What nine frames promise: each frame is turned alone, as it is in the result, with and without its noise. */
    private static double promised(InventedNight night, Combination c, double[] snr) {
        Schedule schedule = Schedule.of(c.recipe());
        Turning turning = new Turning(c.recipe(), schedule);
        double weights = 0;
        for (FrameResult f : c.frames()) {
            if (f.exposure().band().equals(Band.G)) {
                int k = f.exposure()
                                .frame()
                                .head()
                                .file()
                                .getFileName()
                                .toString()
                                .charAt(1)
                        - '0';
                Plane noisy = turned(turning, c, f, f.exposure().load());
                Plane pure = turned(
                        turning, c, f, night.scene().photograph(green(k, 0)).pixels());
                assertTrue(snr[k] > 0);
                weights += 1 / Math.pow(noise(noisy, pure), 2);
            }
        }
        return 1 / Math.sqrt(weights);
    }

    private static Plane turned(Turning turning, Combination c, FrameResult f, Plane plane) {
        return turning.turn(
                        plane,
                        f.limb().at(f.disk()),
                        f.exposure().aspect(),
                        turning.viewAtEpoch(f.limb().at(c.disk())),
                        InventedNight.SIDE,
                        InventedNight.SIDE,
                        0,
                        InventedNight.SIDE,
                        Progress.NONE)
                .picture();
    }

    @Test
    void noiseFallsWithTheSquareRootOfNineFrames() {
        InventedNight night = night("even", EVEN);
        Combination c = InventedNight.combine(coloursAlone(night));
        double merged = noise(c.cube().green(), clean.cube().green());
        assertEquals(1, merged / promised(night, c, EVEN), 0.1, "merged " + merged);
        for (FrameResult f : c.frames()) {
            if (f.exposure().band().equals(Band.G)) {
                assertEquals(1 / 9.0, f.weight(), 0.02);
            }
        }

        // In the middle of the disk all count, and the weight tells the noise that is left.
        Coverage coverage = c.coverage().get("G");
        assertTrue(
                coverage.frames().at(85, 85) >= 8,
                "covered by " + coverage.frames().at(85, 85));
        assertEquals(1, merged * Math.sqrt(coverage.weight().at(85, 85)), 0.35);

        // With memory for one frame and seven rows it is the same, bit by bit.
        long frame = 4L * InventedNight.SIDE * InventedNight.SIDE;
        Combination frugal = new Combiner(coloursAlone(night), new Memory(frame, 2 * 4 * 9 * InventedNight.SIDE * 7))
                .combine(Progress.NONE);
        for (int k = 0; k < 3; k++) {
            assertArrayEquals(
                    c.cube().planes().get(k).data(),
                    frugal.cube().planes().get(k).data());
        }
        assertEquals(JsonReport.of(c, "test"), JsonReport.of(frugal, "test"));
    }

    @Test
    void unequalNoiseIsWeighed() {
        InventedNight night = night("unequal", UNEQUAL);
        Combination c = InventedNight.combine(coloursAlone(night));
        double merged = noise(c.cube().green(), clean.cube().green());
        assertEquals(1, merged / promised(night, c, UNEQUAL), 0.1, "merged " + merged);
        double[] weight = new double[9];
        for (FrameResult f : c.frames()) {
            if (f.exposure().band().equals(Band.G)) {
                weight[
                        f.exposure()
                                        .frame()
                                        .head()
                                        .file()
                                        .getFileName()
                                        .toString()
                                        .charAt(1)
                                - '0'] = f.weight();
            }
        }
        assertEquals(9, weight[0] / weight[1], 2); // (120 / 40)^2
        assertEquals(16, weight[0] / weight[3], 4); // (120 / 30)^2
    }

    /**
     * Two sharp frames with much noise, four blurred ones with little: together better than either. The scene is detailed
     * all over, so the blurred ones help little; by noise alone they would have all but a fiftieth of the weight.
     */
    @Test
    void sharpFramesGiveTheDetailAndCleanOnesTheRest() {
        double both = detailError("both", true, true);
        double sharp = detailError("sharp", true, false);
        double blurred = detailError("blurred", false, true);
        assertTrue(both < sharp && both < 0.5 * blurred, both + " by " + sharp + " and " + blurred);
    }

    private static double detailError(String name, boolean sharp, boolean blurred) {
        InventedNight night = new InventedNight(folder(name), 7);
        Shot reference = InventedNight.shot(Band.L, 0, InventedNight.camera(), 0, 1);
        night.add("l.fits", reference);
        for (int k = 0; k < (sharp ? 2 : 0); k++) {
            night.add("s" + k + ".fits", green(k, 25));
        }
        for (int k = 3; k < (blurred ? 7 : 0); k++) {
            night.add("b" + k + ".fits", green(k, 150), plane -> Gaussian.blur(plane, 2.2));
        }
        night.add("r.fits", InventedNight.shot(Band.R, -190, InventedNight.camera(), 100, 1))
                .add("b.fits", InventedNight.shot(Band.B, 190, InventedNight.camera(), 100, 2));
        Combination c = InventedNight.combine(coloursAlone(night));
        return noise(c.cube().green(), night.truth(Band.G, reference));
    }

    /** Frames of an hour and none near its middle: what only the early or only the late ones saw comes from them. */
    @Test
    void earlyAndLateFramesFillWhatTheOthersMiss() {
        InventedNight night = new InventedNight(folder("long"), 7);
        Shot reference = InventedNight.shot(Band.L, 0, InventedNight.camera(), 0, 1);
        night.add("l.fits", reference);
        List<Integer> times = List.of(-1900, -1850, -1800, 1800, 1850, 1900);
        for (int t : times) {
            night.add("g" + t + ".fits", InventedNight.shot(Band.G, t, InventedNight.camera(), 100, t + 5000));
        }
        night.add("r.fits", InventedNight.shot(Band.R, -190, InventedNight.camera(), 100, 1))
                .add("b.fits", InventedNight.shot(Band.B, 190, InventedNight.camera(), 100, 2));
        Combination c = InventedNight.combine(coloursAlone(night));
        Plane frames = c.coverage().get("G").frames();
        int radius = (int) c.disk().equatorialRadiusPx();
        int middle = (int) c.disk().x();
        int row = (int) c.disk().y();
        assertEquals(6, frames.at(middle, row), 1);
        int east = 0;
        for (int x = middle - radius; x < middle + radius; x++) {
            int n = (int) frames.at(x, row);
            east += n == 3 ? 1 : 0;
        }
        assertTrue(east >= 4, "three frames cover " + east + " pixels of the row");
        // Where three of six see a place, none of the others is mixed in.
        Plane truth = night.truth(Band.G, reference);
        double scale = c.cube().green().at(middle, row) / truth.at(middle, row);
        double worst = 0;
        for (int x = middle - radius; x < middle + radius; x++) {
            if (frames.at(x, row) == 3 && Math.abs(x - middle) < 0.93 * radius) {
                worst = Math.max(worst, Math.abs(c.cube().green().at(x, row) / scale / truth.at(x, row) - 1));
            }
        }
        assertTrue(worst < 0.06, "off by " + worst);
    }
}
