package org.epochrome.session.combine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.epochrome.colour.merge.Coverage;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.world.Surface;
import org.epochrome.disk.FittedDisk;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.job.Progress;
import org.epochrome.moon.removal.Moons;
import org.epochrome.session.InventedNight;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.Memory;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Turning;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Merging many frames of one band, through the whole path, on scenes of the demo's ray-caster. */
@Tag("session")
class MergingTest {
    private static final double[] EVEN = {60, 60, 60, 60, 60, 60, 60, 60, 60};
    private static final double[] UNEQUAL = {120, 40, 60, 30, 90, 50, 40, 100, 70};

    private static final Memory MEMORY = new Memory(1 << 24, 1 << 24);

    /** The bounds are of this surface; the Jupiter of the demo leaves 0.084 where but two frames see a place. */
    private static final Surface JUPITER = Surface.invented(Body.JUPITER, 7);

    @TempDir
    private static Path folder;

    /** By number and signal to noise. */
    private static final Map<List<Double>, Plane> PHOTOGRAPHED = new HashMap<>();

    private static InventedNight night;
    private static Combination even;
    /** The same frames without noise, merged with the same places. */
    private static Plane clean;

    @BeforeAll
    static void combineNineFrames() {
        night = night("even", EVEN);
        even = InventedNight.combine(coloursAlone(night));
        clean = merging(new double[9]).band("G", Progress.NONE).mean();
    }

    /** The nine frames with other noise, merged with the places that were found. */
    private static Merging merging(double[] snr) {
        Schedule schedule = Schedule.of(even.recipe());
        Turning turning = new Turning(even.recipe(), schedule);
        List<Plane> planes = new ArrayList<>();
        List<FittedDisk> fits = new ArrayList<>();
        for (FrameResult f : even.frames()) {
            boolean green = f.exposure().band().equals(Band.G);
            planes.add(
                    green
                            ? photographed(number(f), snr[number(f)])
                            : f.exposure().load());
            fits.add(f.limb().at(f.disk()));
        }
        return new Merging(
                WorkingFrames.of(schedule, planes, fits),
                turning,
                Moons.NONE,
                turning.viewAtEpoch(fits.get(schedule.reference())),
                MEMORY);
    }

    private static int number(FrameResult green) {
        return green.exposure().frame().head().file().getFileName().toString().charAt(1) - '0';
    }

    private static Shot green(int k, double snr) {
        Random random = new Random(11 + k);
        Camera camera = InventedNight.camera().offsetBy(3 * random.nextDouble(), 3 * random.nextDouble());
        return InventedNight.shot(Band.G, 40 * (k - 4) + 3, camera, snr, 100 + k);
    }

    /** A green frame's floats. */
    private static Plane photographed(int k, double snr) {
        return PHOTOGRAPHED.computeIfAbsent(
                List.of((double) k, snr),
                unused -> night.scene().photograph(green(k, snr)).pixels());
    }

    /** Nine green frames with noise of their own, one red and one blue. */
    private static InventedNight night(String name, double[] snr) {
        InventedNight night = new InventedNight(folder(name), JUPITER, Map.of());
        for (int k = 0; k < snr.length; k++) {
            night.add("g" + k + ".fits", green(k, snr[k]));
        }
        return night.add("r.fits", InventedNight.shot(Band.R, -190, InventedNight.camera(), 100, 1))
                .add("b.fits", InventedNight.shot(Band.B, 190, InventedNight.camera(), 100, 2));
    }

    /** Clear frames only lend their pixels as those of the output. */
    private static Recipe coloursAlone(InventedNight night) {
        return night.recipe().with(new Assignment("R", "G", "B", Optional.empty()));
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

    /** What nine frames promise: each is turned alone, as it is in the result, with and without its noise. */
    private static double promised(double[] snr) {
        Turning turning = new Turning(even.recipe(), Schedule.of(even.recipe()));
        double weights = 0;
        for (FrameResult f : even.frames()) {
            if (f.exposure().band().equals(Band.G)) {
                double noise = noise(turned(turning, f, snr[number(f)]), turned(turning, f, 0));
                weights += 1 / (noise * noise);
            }
        }
        return 1 / Math.sqrt(weights);
    }

    private static Plane turned(Turning turning, FrameResult f, double snr) {
        FittedDisk fitted = f.limb().at(f.disk());
        Turning.CloseUp output = new Turning.CloseUp(
                turning.viewAtEpoch(f.limb().at(even.disk())), InventedNight.SIDE, InventedNight.SIDE);
        return turning.turned(
                        new WorkingFrame(f.exposure(), () -> photographed(number(f), snr), fitted, List.of()),
                        output,
                        true,
                        Progress.NONE)
                .picture();
    }

    @Test
    void noiseFallsWithTheSquareRootOfNineFrames() {
        double merged = noise(even.cube().green(), clean);
        assertEquals(1, merged / promised(EVEN), 0.1, "merged " + merged);
        for (FrameResult f : even.frames()) {
            if (f.exposure().band().equals(Band.G)) {
                assertEquals(1 / 9.0, f.weight(), 0.02);
            }
        }

        // In the middle of the disk all count, and the weight tells the noise that is left.
        Coverage coverage = even.coverage().get("G");
        assertTrue(
                coverage.frames().at(85, 85) >= 8,
                "covered by " + coverage.frames().at(85, 85));
        // one pixel, whose weights depend on how its neighbourhood compares: 0.65 to 1.35 from pixel to pixel
        assertEquals(1, merged * Math.sqrt(coverage.weight().at(85, 85)), 0.35);
    }

    @Test
    void unequalNoiseIsWeighed() {
        Merging merging = merging(UNEQUAL);
        double merged = noise(merging.band("G", Progress.NONE).mean(), clean);
        assertEquals(1, merged / promised(UNEQUAL), 0.1, "merged " + merged);
        double[] weight = new double[9];
        for (int i = 0; i < even.frames().size(); i++) {
            if (even.frames().get(i).exposure().band().equals(Band.G)) {
                weight[number(even.frames().get(i))] = merging.share(i);
            }
        }
        assertEquals(9, weight[0] / weight[1], 1); // (120 / 40)^2
        assertEquals(16, weight[0] / weight[3], 1); // (120 / 30)^2
    }

    /**
     * Two sharp frames with much noise, three blurred ones with little: together better than the
     * sharp ones. The scene is detailed
     * all over, so the blurred ones help little; by noise alone they would have all but a fiftieth of the weight.
     */
    @Test
    void sharpFramesGiveTheDetailAndCleanOnesTheRest() {
        double both = detailError("both", 3);
        double sharp = detailError("sharp", 0);
        assertTrue(both < sharp, both + " by " + sharp);
    }

    private static double detailError(String name, int blurred) {
        InventedNight night = new InventedNight(folder(name), JUPITER, Map.of());
        Shot reference = InventedNight.shot(Band.L, 0, InventedNight.camera(), 0, 1);
        night.add("l.fits", reference);
        for (int k = 0; k < 2; k++) {
            night.add("s" + k + ".fits", green(k, 25));
        }
        for (int k = 3; k < 3 + blurred; k++) {
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
        InventedNight night = new InventedNight(folder("long"), JUPITER, Map.of());
        Shot reference = InventedNight.shot(Band.L, 0, InventedNight.camera(), 0, 1);
        night.add("l.fits", reference);
        List<Integer> times = List.of(-1900, -1800, 1800, 1900);
        for (int t : times) {
            night.add("g" + t + ".fits", InventedNight.shot(Band.G, t, InventedNight.camera(), 300, t + 5000));
        }
        night.add("r.fits", InventedNight.shot(Band.R, -190, InventedNight.camera(), 100, 1))
                .add("b.fits", InventedNight.shot(Band.B, 190, InventedNight.camera(), 100, 2));
        Combination c = InventedNight.combine(coloursAlone(night));
        Plane frames = c.coverage().get("G").frames();
        int radius = (int) c.disk().equatorialRadiusPx();
        int middle = (int) c.disk().x();
        int row = (int) c.disk().y();
        assertEquals(4, frames.at(middle, row));
        int east = 0;
        for (int x = middle - radius; x < middle + radius; x++) {
            int n = (int) frames.at(x, row);
            east += n == 2 ? 1 : 0;
        }
        assertTrue(east >= 4, "two frames cover " + east + " pixels of the row");
        // Where two of four see a place, none of the others is mixed in. Measured 0.040; at a signal to noise of 100
        // the
        // worst pixel was mostly noise, 0.06.
        Plane truth = night.truth(Band.G, reference);
        double scale = c.cube().green().at(middle, row) / truth.at(middle, row);
        double worst = 0;
        for (int x = middle - radius; x < middle + radius; x++) {
            if (frames.at(x, row) == 2 && Math.abs(x - middle) < 0.93 * radius) {
                worst = Math.max(worst, Math.abs(c.cube().green().at(x, row) / scale / truth.at(x, row) - 1));
            }
        }
        assertTrue(worst < 0.05, "off by " + worst);
    }
}
