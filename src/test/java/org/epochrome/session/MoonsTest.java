package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.epochrome.demo.scene.Camera;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.moon.FoundMoon;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Recipe;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A moon beside an invented Jupiter, painted on its frames: a blurred disk that goes its own way. */
@Tag("session")
class MoonsTest {
    private static final double MIDDLE = 0.5 * (InventedNight.SIDE - 1);
    private static final double AWAY_X = 58;
    private static final double AWAY_Y = -57;
    /** Pixels a second: some five pixels between the first and the last frame. */
    private static final double COURSE_X = -0.012;

    private static final double COURSE_Y = 0.004;
    private static final double RADIUS = 4;
    /** As blurred as the frames. */
    private static final double SOFT = 2.3 / 2.3548;

    private static final float LEVEL = 0.5f;
    private static final int FINE = 5;
    /** So far from the moon nothing else is in sight. */
    private static final double REACH = 10;

    @TempDir
    private Path folder;

    /** Bands and the middles of their recordings, seconds, with how far the disk drifted. */
    private static final Map<Band, double[]> SHOTS = Map.of(
            Band.R, new double[] {-200, 2.2, -1.7},
            Band.G, new double[] {5, 0.4, 1.1},
            Band.B, new double[] {200, 1.3, 0.7});

    private InventedNight night(boolean moon) {
        InventedNight night = new InventedNight(folder, TransitNight.JUPITER, Map.of());
        for (Band band : List.of(Band.R, Band.G, Band.B)) {
            double[] s = SHOTS.get(band);
            Camera camera = InventedNight.camera().offsetBy(s[1], s[2]);
            night.add(
                    band.name() + moon + ".fits",
                    InventedNight.shot(band, s[0], camera, 150, 3),
                    plane -> moon ? painted(plane, MIDDLE + s[1], MIDDLE + s[2], s[0]) : plane);
        }
        return night;
    }

    private static Plane painted(Plane frame, double centreX, double centreY, double second) {
        float brightest = 0;
        for (float v : frame.data()) {
            brightest = Math.max(brightest, v);
        }
        Plane moon = new Plane(frame.width(), frame.height());
        for (int y = 0; y < frame.height(); y++) {
            for (int x = 0; x < frame.width(); x++) {
                int inside = 0;
                for (int j = 0; j < FINE; j++) {
                    for (int i = 0; i < FINE; i++) {
                        double dx = x + (i + 0.5) / FINE - 0.5 - centreX - AWAY_X - COURSE_X * second;
                        double dy = y + (j + 0.5) / FINE - 0.5 - centreY - AWAY_Y - COURSE_Y * second;
                        inside += Math.hypot(dx, dy) < RADIUS ? 1 : 0;
                    }
                }
                moon.set(x, y, LEVEL * brightest * inside / (float) (FINE * FINE));
            }
        }
        Plane soft = Gaussian.blur(moon, SOFT);
        Plane result = frame.copy();
        for (int i = 0; i < result.data().length; i++) {
            result.data()[i] += soft.data()[i];
        }
        return result;
    }

    @Test
    void staysOneRoundMoonOfItsColour() {
        Recipe recipe = night(true).recipe();
        Combination c = InventedNight.combine(recipe);
        assertEquals(1, c.moons().size(), c.moons().toString());
        FoundMoon moon = c.moons().get(0);
        assertEquals(FoundMoon.Where.BESIDE, moon.where());
        double x = c.disk().x() + AWAY_X;
        double y = c.disk().y() + AWAY_Y;
        assertEquals(x, moon.x(), 0.015);
        assertEquals(y, moon.y(), 0.015);
        double[][] kept = centroids(c, x, y);
        double[][] left = centroids(
                InventedNight.combine(recipe.with(recipe.corrections().with(Corrections::moons, false))), x, y);
        for (int k = 0; k < 3; k += 2) {
            // Measured 0.026, and 0.019 to 0.029 with seven other seeds of the noise.
            assertTrue(apart(kept, k) < 0.05, "apart by " + apart(kept, k));
            // Where nothing is done colours lie as far apart as the moon went.
            assertEquals(Math.hypot(COURSE_X, COURSE_Y) * 200, apart(left, k), 0.3);
        }
    }

    /** A moon that the fits see moves the red disk by 0.035 px and widens its blur by 2 %. */
    @Test
    void leavesDisksWhereTheyLieWithoutIt() {
        List<FittedDisk> with = disks(night(true).recipe());
        List<FittedDisk> without = disks(night(false).recipe());
        for (int i = 0; i < with.size(); i++) {
            Disk disk = with.get(i).disk();
            Disk bare = without.get(i).disk();
            // measured 0.003, 0.002 and 0.005 px; 0.0053, 0.0057 and 0.0017 px
            assertEquals(0, Math.hypot(disk.x() - bare.x(), disk.y() - bare.y()), 0.01);
            assertEquals(
                    without.get(i).shading().blurPx(), with.get(i).shading().blurPx(), 0.01);
        }
    }

    private static List<FittedDisk> disks(Recipe recipe) {
        return InventedNight.combine(recipe).frames().stream()
                .map(Combination.FrameResult::limb)
                .toList();
    }

    @Test
    void changesNothingWhereThereIsNone() {
        Recipe recipe = night(false).recipe();
        Combination with = InventedNight.combine(recipe);
        assertTrue(with.moons().isEmpty());
        Combination without =
                InventedNight.combine(recipe.with(recipe.corrections().with(Corrections::moons, false)));
        for (int k = 0; k < 3; k++) {
            assertArrayEquals(
                    without.cube().planes().get(k).data(),
                    with.cube().planes().get(k).data());
        }
    }

    private static double apart(double[][] places, int k) {
        return Math.hypot(places[k][0] - places[1][0], places[k][1] - places[1][1]);
    }

    /** Centre of light in red, green and blue about a place. */
    private static double[][] centroids(Combination c, double x, double y) {
        double[][] result = new double[3][2];
        for (int k = 0; k < 3; k++) {
            Plane plane = c.cube().planes().get(k);
            double sum = 0;
            double sumX = 0;
            double sumY = 0;
            for (int row = (int) y - 10; row <= (int) y + 11; row++) {
                for (int column = (int) x - 10; column <= (int) x + 11; column++) {
                    double v = Math.hypot(column - x, row - y) < REACH ? plane.at(column, row) : 0;
                    sum += v;
                    sumX += v * column;
                    sumY += v * row;
                }
            }
            result[k] = new double[] {sumX / sum, sumY / sum};
        }
        return result;
    }
}
