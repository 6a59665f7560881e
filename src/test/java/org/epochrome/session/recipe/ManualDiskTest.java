package org.epochrome.session.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.session.InventedNight;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.text.Message;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Disks that are held by hand, against the scene's own. */
@Tag("session")
class ManualDiskTest {
    @TempDir
    private static Path folder;

    private static InventedNight night;

    @BeforeAll
    static void photograph() {
        night = new InventedNight(folder)
                .add("r.fits", InventedNight.shot(Band.R, -100, InventedNight.camera(), 100, 1))
                .add(
                        "g.fits",
                        InventedNight.shot(Band.G, 5, InventedNight.camera().offsetBy(0.4, 1.1), 100, 2))
                .add(
                        "b.fits",
                        InventedNight.shot(Band.B, 130, InventedNight.camera().offsetBy(1.3, 0.7), 100, 3));
    }

    private static Recipe held(Recipe recipe, Map<Path, ManualDisk> disks) {
        return recipe.with(recipe.frames().holding(disks));
    }

    @Test
    void trueDisksHeldGiveTheShadingThatAFitFinds() {
        Combination fitted = InventedNight.combine(night.recipe());
        Map<Path, ManualDisk> disks = new HashMap<>();
        for (FrameResult f : fitted.frames()) {
            TrueDisk t = night.disk(f);
            disks.put(
                    f.exposure().frame().head().file(),
                    new ManualDisk(t.x(), t.y(), t.equatorialRadiusPx(), OptionalDouble.of(InventedNight.NORTH)));
        }
        Combination c = InventedNight.combine(held(night.recipe(), disks));
        assertEquals(3, c.frames().size());
        for (int i = 0; i < 3; i++) {
            FrameResult f = c.frames().get(i);
            assertEquals(0, night.offPx(c, f));
            assertEquals(InventedNight.NORTH, f.disk().northAngleDeg());
            // The fit itself is good to some hundredths of a pixel; so the shading must be much the same.
            assertEquals(
                    fitted.frames().get(i).limb().shading().blurPx(),
                    f.limb().shading().blurPx(),
                    0.05);
        }
        assertEquals(0, apart(fitted.cube().green(), c.cube().green()), 5e-5);
        assertEquals(0, apart(fitted.cube().blue(), c.cube().blue()), 0.005);
    }

    /** Rms of the difference on the inner disk, as a part of the mean. */
    private static double apart(Plane a, Plane b) {
        double squares = 0;
        double sum = 0;
        double n = 0;
        for (int y = 0; y < a.height(); y++) {
            for (int x = 0; x < a.width(); x++) {
                if (Math.hypot(x - 85, (y - 85) / 0.93) < 55) {
                    squares += Math.pow(a.at(x, y) - b.at(x, y), 2);
                    sum += a.at(x, y);
                    n++;
                }
            }
        }
        return Math.sqrt(squares / n) / (sum / n);
    }

    /** The others follow neither the wrong place nor what the detail says of it. */
    @Test
    void aWrongDiskStaysWhereItIsHeldAndTheOthersWhereTheyLie() {
        Recipe recipe = night.recipe();
        Path blue = recipe.frames().all().get(2).head().file();
        ManualDisk wrong = new ManualDisk(86.5, 85, 62, OptionalDouble.empty());
        Combination c = InventedNight.combine(held(recipe, Map.of(blue, wrong)));
        FrameResult b = c.frames().get(2);
        assertEquals(wrong.x(), b.disk().x());
        assertEquals(wrong.y(), b.disk().y());
        assertEquals(wrong.equatorialRadiusPx(), b.disk().equatorialRadiusPx());
        assertTrue(Message.texts(b.warnings()).contains("Its disk was set by hand."));
        assertTrue(
                night.offPx(c, c.frames().get(0)) < 0.03,
                "red off by " + night.offPx(c, c.frames().get(0)));
        assertTrue(
                night.offPx(c, c.frames().get(1)) < 0.03,
                "green off by " + night.offPx(c, c.frames().get(1)));
    }

    @Test
    void aFrameWithSomethingBrighterInItCanBeUsedByHand() {
        InventedNight lit = new InventedNight(folder)
                .add("lit-r.fits", InventedNight.shot(Band.R, -100, InventedNight.camera(), 100, 1))
                .add("lit-g.fits", InventedNight.shot(Band.G, 5, InventedNight.camera(), 100, 2))
                .add(
                        "lit-b.fits",
                        InventedNight.shot(Band.B, 130, InventedNight.camera().offsetBy(1.3, 0.7), 100, 3),
                        ManualDiskTest::withAStreetLamp);
        Recipe recipe = lit.recipe();
        Combination astray = InventedNight.combine(recipe);
        assertTrue(lit.offPx(astray, astray.frames().get(2)) > 5);
        Path blue = recipe.frames().all().get(2).head().file();
        TrueDisk truth = lit.disk(astray.frames().get(2));
        ManualDisk disk = new ManualDisk(truth.x(), truth.y(), truth.equatorialRadiusPx(), OptionalDouble.empty());
        Combination c = InventedNight.combine(held(recipe, Map.of(blue, disk)));
        assertEquals(0, lit.offPx(c, c.frames().get(2)));
        // The scene's blur is a full width at half maximum.
        assertEquals(2.3 / 2.3548, c.frames().get(2).limb().shading().blurPx(), 0.05);
    }

    /** So bright that the planet is faint beside it. */
    private static Plane withAStreetLamp(Plane counts) {
        for (int i = 0; i < counts.data().length; i++) {
            counts.data()[i] = Math.round(0.1f * counts.data()[i]);
        }
        for (int y = 2; y < 25; y++) {
            for (int x = 2; x < 25; x++) {
                counts.set(x, y, 64_000);
            }
        }
        return counts;
    }
}
