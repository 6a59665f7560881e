package org.epochrome.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.demo.world.Surface;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.disk.solve.BSpline;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.disk.start.DiskStart;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.job.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Frames without a disk that can be fitted are refused in a sentence; frames that only look like such are not. */
@Timeout(20)
class NoDiskTest {
    private static final int SIDE = 140;
    private static final float FULL = 65535;
    /** What is wrong; what to do. */
    private static final String SENTENCE = "[a-z][^.;\\n]*; [^.;\\n]+";

    private static final Portrait JUPITER =
            Portrait.full(Body.JUPITER, 2, 40, 20).shaded(0.9, 2.5).sunAt(5, 2);
    private static final Plane EVEN = JUPITER.even(new Noise(150, 0.2, 9)).pixels();
    private static final TrueDisk TRUTH = JUPITER.even(Noise.NONE).disk();

    private static FittedDisk fit(Portrait p, Plane frame) {
        return new DiskFit(p.globe(), true, false, Smear.NONE, OptionalDouble.empty(), OptionalDouble.empty())
                .fit(frame, Progress.NONE);
    }

    private static void refused(Plane frame, String words) {
        String said =
                assertThrows(DiskNotFound.class, () -> fit(JUPITER, frame)).getMessage();
        assertTrue(said.contains(words), said);
        assertTrue(said.matches(SENTENCE), said);
    }

    private static Plane noise(double level, double sigma) {
        Random random = new Random(12);
        Plane plane = new Plane(SIDE, SIDE);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = (float) (level + sigma * random.nextGaussian());
        }
        return plane;
    }

    @Test
    void black() {
        refused(new Plane(SIDE, SIDE), "empty");
    }

    @Test
    void onlyNoise() {
        refused(noise(0.05, 0.01), "noise");
    }

    /** A flat field: bright, even but for its noise. */
    @Test
    void flatField() {
        refused(Plane.filled(SIDE, SIDE, 0.6f), "empty");
        refused(noise(0.6, 0.004), "noise");
    }

    @Test
    void noDataAtAll() {
        refused(Plane.filled(SIDE, SIDE, Float.NaN), "no data");
    }

    @Test
    void noDataOnTheDisk() {
        Plane holed = EVEN.copy();
        for (int y = 40; y < 80; y++) {
            for (int x = 42; x < 86; x++) {
                holed.set(x, y, Float.NaN);
            }
        }
        refused(holed, "no data");
    }

    /** The rim of a large hole is a small part of a large disk. */
    @Test
    void largeHole() {
        Plane holed = new Plane(480, 480);
        for (int y = 0; y < 480; y++) {
            for (int x = 0; x < 480; x++) {
                boolean hole = Math.abs(x - 240) < 100 && Math.abs(y - 250) < 100;
                holed.set(x, y, hole ? Float.NaN : Math.hypot(x - 240, y - 240) < 200 ? 0.6f : 0.01f);
            }
        }
        refused(holed, "no data");
    }

    @ParameterizedTest
    @CsvSource({"0, -35", "-50, 50", "55, 3"})
    void cutByTheEdge(double x, double y) {
        refused(JUPITER.offset(x, y).even(new Noise(150, 0.2, 9)).pixels(), "edge");
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.5, 3})
    void tiny(double radius) {
        Portrait p = Portrait.full(Body.JUPITER, 2, radius, 20).shaded(0.9, 1.5);
        refused(p.even(new Noise(150, 0.2, 9)).pixels(), "pixels");
    }

    /** Much brighter than the camera can tell, at the end of 16 bits, of 8, of 12 moved up, and rescaled afterwards. */
    @ParameterizedTest
    @CsvSource({
        "6, 65535, 1",
        "2, 65535, 1",
        "1.35, 65535, 1",
        "2, 255, 1",
        "1.5, 255, 257",
        "2, 4095, 16",
        "2, 65535, 0.7"
    })
    void overexposed(double factor, float full, float scale) {
        refused(exposed(EVEN, factor / Portrait.GAIN, full, scale), "overexposed");
    }

    /** A resampling, as stacking programs do it, leaves the last bits of the plateau's floats unequal. */
    @Test
    void overexposedAndResampled() {
        Plane frame = exposed(EVEN, 1.6 / Portrait.GAIN, FULL, 1 / FULL);
        Plane moved = frame.copy();
        double[] weights = new double[4];
        BSpline.cubic(0.3, weights);
        for (int y = 0; y < frame.height(); y++) {
            for (int x = 1; x < frame.width() - 2; x++) {
                float sum = 0;
                for (int i = 0; i < 4; i++) {
                    sum += (float) weights[i] * frame.at(x - 1 + i, y);
                }
                moved.set(x, y, 0.83f * sum);
            }
        }
        refused(moved, "overexposed");
    }

    /** A tenth of a large, marked disk, whose start is sought on coarser pixels. */
    @Test
    void brightZonesOverexposed() {
        Portrait large = Portrait.full(Body.JUPITER, 2, 170, 20).shaded(0.9, 3);
        Plane frame =
                large.taken(Surface.grey(Belts.map()), new Noise(150, 0.2, 9)).pixels();
        refused(exposed(frame, 1.25 / Portrait.GAIN, FULL, 1), "overexposed");
    }

    /** The part that is named is the part that was clipped. */
    @Test
    void saysHowMuchIsClipped() {
        Plane frame = exposed(EVEN, 1.6 / Portrait.GAIN, FULL, 1);
        int clipped = 0;
        for (float v : frame.data()) {
            clipped += v == FULL ? 1 : 0;
        }
        double area = Math.PI * square(TRUTH.equatorialRadiusPx()) * Body.JUPITER.axisRatio();
        String said =
                assertThrows(DiskNotFound.class, () -> fit(JUPITER, frame)).getMessage();
        double percent = Double.parseDouble(said.replaceAll(".*?([0-9]+) %.*", "$1"));
        // Of the patch, which the blur makes a little larger than the disk.
        assertEquals(100 * clipped / area, percent, 4);
    }

    /** Scaled so that the brightest pixels just reach the end: a usual way to save a picture. */
    @ParameterizedTest
    @CsvSource({"1.0, 65535", "1.0, 255", "1.01, 65535"})
    void scaledToTheEndOfTheFormat(double factor, float full) {
        float most = 0;
        for (float v : EVEN.data()) {
            most = Math.max(most, v);
        }
        accepted(exposed(EVEN, factor / most, full, 1));
    }

    /** Eight bits or fewer hold an even disk without noise in a few large steps. */
    @ParameterizedTest
    @CsvSource({"0.9, 200", "0.9, 60", "0.6, 200", "0.52, 60", "0.5, 200", "0.6, 255", "0.9, 255"})
    void fewGreyLevels(double minnaert, float top) {
        Portrait flat = Portrait.full(Body.MARS, 5, 40, 20).shaded(minnaert, 2.5);
        Rendered rendered = flat.even(Noise.NONE);
        Plane even = rendered.pixels();
        float most = 0;
        for (float v : even.data()) {
            most = Math.max(most, v);
        }
        DiskStart start = DiskStart.of(exposed(even, 1.0 / most, top, 1));
        TrueDisk truth = rendered.disk();
        assertEquals(truth.x(), start.x(), 0.1);
        assertEquals(truth.y(), start.y(), 0.1);
    }

    /** Strange frames: fitted or refused, but nothing else. */
    @ParameterizedTest
    @CsvSource({"1, 1", "1, 300", "7, 7", "9, 9", "30, 12", "16, 500", "401, 30"})
    void smallAndNarrowFrames(int width, int height) {
        fittedOrRefused(Plane.filled(width, height, 3));
        Plane spot = new Plane(width, height);
        spot.set(width / 2, height / 2, 1);
        fittedOrRefused(spot);
        Random random = new Random(3);
        Plane blocks = new Plane(width, height);
        for (int i = 0; i < blocks.data().length; i++) {
            blocks.data()[i] = random.nextFloat() < 0.3 ? 1 : Float.NaN;
        }
        fittedOrRefused(blocks);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "one is infinite",
                "one is minus infinite",
                "negative",
                "huge values",
                "two levels",
                "bar",
                "ring",
                "slope"
            })
    void strangeFrames(String how) {
        Random random = new Random(5);
        Plane frame = EVEN.copy();
        for (int y = 0; y < frame.height(); y++) {
            for (int x = 0; x < frame.width(); x++) {
                float v = frame.at(x, y);
                boolean spoilt = x == 50 && y == 60;
                float rough = 1 + 0.01f * random.nextFloat();
                frame.set(
                        x,
                        y,
                        switch (how) {
                            case "one is infinite" -> spoilt ? Float.POSITIVE_INFINITY : v;
                            case "one is minus infinite" -> spoilt ? Float.NEGATIVE_INFINITY : v;
                            case "negative" -> -v;
                            case "huge values" -> 1e36f * v;
                            case "two levels" -> v > 0.4 ? 1 : 0;
                            case "bar" -> Math.abs(y - 60) < 12 && x > 10 && x < 110 ? rough : 0;
                            case "ring" -> Math.abs(Math.hypot(x - 62, y - 62) - 35) < 5 ? rough : 0;
                            default -> 0.01f * (x + rough);
                        });
            }
        }
        fittedOrRefused(frame);
    }

    /** Ten pixels across are few, but enough. Measured: centre 0.006 px, radius 0.08 px. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 7})
    void smallDisksAreFitted(double radius) {
        Portrait p = Portrait.full(Body.JUPITER, 2, radius, 20).shaded(0.9, 2);
        FittedDisk f = fit(p, p.even(new Noise(150, 0.2, 9)).pixels());
        TrueDisk t = p.even(Noise.NONE).disk();
        assertEquals(0, Math.hypot(f.disk().x() - t.x(), f.disk().y() - t.y()), 0.02);
        assertEquals(radius, f.disk().equatorialRadiusPx(), 0.2);
    }

    private static void fittedOrRefused(Plane frame) {
        try {
            FittedDisk f = fit(JUPITER, frame);
            assertTrue(Double.isFinite(f.disk().x() + f.disk().y() + f.disk().equatorialRadiusPx()), "not a number");
        } catch (DiskNotFound e) {
            assertTrue(e.getMessage().matches(SENTENCE), e.getMessage());
        }
    }

    /** A spot of one per cent may be clipped: a polar cap, a glint. */
    @Test
    void aClippedSpot() {
        Plane frame = exposed(EVEN, 0.5, FULL, 1);
        for (int y = -4; y <= 4; y++) {
            for (int x = -4; x <= 4; x++) {
                if (x * x + y * y <= 16) {
                    frame.set(70 + x, 55 + y, FULL);
                }
            }
        }
        accepted(frame);
    }

    /** A few hot pixels, on the disk and in the sky, say nothing. */
    @Test
    void hotPixels() {
        Plane frame = exposed(EVEN, 0.5, FULL, 1);
        for (int i = 0; i < 5; i++) {
            frame.set(20 + 19 * i, 50 + (i * 37) % 60, FULL);
        }
        accepted(frame);
    }

    /** Of two equal disks the first is found, as if it were alone. */
    @Test
    void twoEqualDisks() {
        Plane one = EVEN;
        Plane both = new Plane(2 * one.width(), one.height());
        for (int y = 0; y < both.height(); y++) {
            for (int x = 0; x < both.width(); x++) {
                both.set(x, y, one.at(x % one.width(), y));
            }
        }
        accepted(both);
    }

    private static void accepted(Plane frame) {
        FittedDisk f = fit(JUPITER, frame);
        TrueDisk t = TRUTH;
        double off = Math.hypot(f.disk().x() - t.x(), f.disk().y() - t.y());
        assertTrue(off < 0.1, "centre off by " + off);
        assertEquals(1, f.disk().equatorialRadiusPx() / t.equatorialRadiusPx(), 0.001);
    }

    /** The frame with everything brighter by a factor, in whole numbers, clipped at a largest one, rescaled. */
    private static Plane exposed(Plane plane, double factor, float full, float scale) {
        Plane result = plane.copy();
        float[] data = result.data();
        for (int i = 0; i < data.length; i++) {
            data[i] = scale * (float) Math.max(0, Math.min(full, Math.rint(factor * full * data[i])));
        }
        return result;
    }

    private static double square(double v) {
        return v * v;
    }
}
