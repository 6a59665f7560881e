package org.epochrome.colour.finish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Srgb;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.truth.TruthTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FinishTest {
    private static final int SIDE = 64;

    @Test
    void encodesBySrgb() {
        List<TruthTable.Row> rows = TruthTable.rows("colour/srgb.csv");
        for (TruthTable.Row row : rows) {
            double shown = row.number("shown8") / 255;
            // skimage's middle row sums to 1 to within 1e-6.
            assertEquals(row.number("linear"), Srgb.decode(shown), 1e-6);
            // A thousandth of a step of 16 bits on the flat end of the curve, where the slope is 12.92.
            assertEquals(shown, Srgb.encode(row.number("linear")), 2e-5);
        }
        assertEquals(256, rows.size());
    }

    /** IEC 61966-2-1: the straight part ends at 0.0031308 linear, 0.04045 shown; the two parts meet there to 1e-7. */
    @Test
    void bothPartsOfTheCurveMeet() {
        assertEquals(0.04045, Srgb.encode(0.0031308), 1e-6);
        assertEquals(Srgb.encode(0.0031308), Srgb.encode(0.0031309), 2e-6);
        assertEquals(1, Srgb.encode(1), 1e-12);
        assertEquals(0, Srgb.encode(Double.NaN));
        assertEquals(0, Srgb.encode(-0.1));
        assertTrue(Srgb.encode(1.3) > 1);
    }

    @Test
    void greyDisksHaveEqualMeans() {
        ColourCube cube = cube(0.5, 0.3, 0.1);
        List<Plane> shown = picture(cube, disk(), Body.JUPITER, White.DISK);
        double[] means = linearMeans(shown);
        assertEquals(1, means[0] / means[1], 1e-4);
        assertEquals(1, means[2] / means[1], 1e-4);
    }

    @Test
    void measuredGainsAreTakenAsTheyAre() {
        ColourCube cube = cube(0.2, 0.3, 0.4);
        ColourCube balanced = Finish.balanced(cube, disk(), Body.MARS, WhiteBalance.solar(new Gains(3, 2, 1)));
        double[] means = linearMeans(Finish.shown(balanced, disk(), Tone.DEFAULT));
        assertEquals(0.2 / 0.3 * 1.5, means[0] / means[1], 1e-6);
        assertEquals(0.4 / 0.3 * 0.5, means[2] / means[1], 1e-6);
        assertThrows(IllegalArgumentException.class, () -> new Gains(1, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> WhiteBalance.of(White.SOLAR));
    }

    @Test
    void leavesTheCamerasColoursIfAsked() {
        double[] means = linearMeans(picture(cube(0.5, 0.3, 0.1), disk(), Body.MARS, White.NONE));
        assertEquals(5 / 3.0, means[0] / means[1], 1e-6);
        assertEquals(1 / 3.0, means[2] / means[1], 1e-6);
    }

    @ParameterizedTest
    @EnumSource(value = White.class, mode = EnumSource.Mode.EXCLUDE, names = "SOLAR")
    void brightestPartIsShownNearFourFifths(White white) {
        List<Plane> shown = picture(cube(0.05, 0.03, 0.01), disk(), Body.SATURN, white);
        float[] bright = new float[SIDE * SIDE];
        int n = 0;
        for (int i = 0; i < SIDE * SIDE; i++) {
            if (DISK.data()[i] > 0) {
                bright[n++] = Math.max(
                        shown.get(0).data()[i],
                        Math.max(shown.get(1).data()[i], shown.get(2).data()[i]));
            }
        }
        bright = Arrays.copyOf(bright, n);
        Arrays.sort(bright);
        // Some of the thousand pixels may lie above; not many, and not far.
        assertEquals(0.8, bright[(int) (0.998 * (n - 1))], 1e-4);
        assertTrue(bright[n - 1] < 0.86, "brightest: " + bright[n - 1]);
    }

    /** One exposure for all: hues do not depend on how bright the frames were. */
    @Test
    void doesNotDependOnTheFramesBrightness() {
        List<Plane> one = picture(cube(0.4, 0.3, 0.2), disk(), Body.JUPITER, White.PHOTOMETRIC);
        List<Plane> other = picture(cube(0.1, 0.6, 0.05), disk(), Body.JUPITER, White.PHOTOMETRIC);
        for (int c = 0; c < 3; c++) {
            for (int i = 0; i < SIDE * SIDE; i++) {
                assertEquals(one.get(c).data()[i], other.get(c).data()[i], 1e-5);
            }
        }
    }

    @Test
    void noDataNeverReachesThePicture() {
        ColourCube cube = cube(0.4, 0.3, 0.2);
        cube.green().data()[SIDE * 32 + 30] = Float.NaN;
        cube.blue().data()[0] = Float.NaN;
        for (Plane plane : picture(cube, disk(), Body.JUPITER, White.PHOTOMETRIC)) {
            for (float v : plane.data()) {
                assertTrue(v >= 0 && v <= 1.5f, "shown: " + v);
            }
        }
    }

    @Test
    void survivesAnEmptyDisk() {
        Plane none = new Plane(SIDE, SIDE);
        for (Plane plane : picture(cube(0.4, 0.3, 0.2), none, Body.MARS, White.DISK)) {
            for (float v : plane.data()) {
                assertTrue(v >= 0 && Float.isFinite(v));
            }
        }
    }

    private static List<Plane> picture(ColourCube cube, Plane disk, Body body, White white) {
        return Finish.shown(Finish.balanced(cube, disk, body, WhiteBalance.of(white)), disk, Tone.DEFAULT);
    }

    /** The same mottled disk in three strengths on a faint sky. */
    private static ColourCube cube(double red, double green, double blue) {
        return new ColourCube(plane(red), plane(green), plane(blue));
    }

    private static final Plane DISK = disk();

    private static Plane plane(double level) {
        Random random = new Random(5);
        Plane plane = new Plane(SIDE, SIDE);
        for (int i = 0; i < plane.data().length; i++) {
            double mottle = 1 + 0.05 * random.nextGaussian();
            plane.data()[i] = (float) (level * (DISK.data()[i] > 0 ? mottle : 0.01 * mottle));
        }
        return plane;
    }

    private static Plane disk() {
        Plane disk = new Plane(SIDE, SIDE);
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                disk.set(x, y, Math.hypot(x - 32, y - 32) < 25 ? 1 : 0);
            }
        }
        return disk;
    }

    private static double[] linearMeans(List<Plane> shown) {
        double[] means = new double[3];
        Plane disk = disk();
        for (int c = 0; c < 3; c++) {
            for (int i = 0; i < disk.data().length; i++) {
                means[c] += disk.data()[i] * Srgb.decode(shown.get(c).data()[i]);
            }
        }
        return means;
    }
}
