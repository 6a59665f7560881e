package org.epochrome.session.preview;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.image.Binning;
import org.epochrome.image.Plane;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.report.Outputs;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A quick picture is the full one on coarser pixels. */
@Tag("session")
class PreviewTest {
    private static Recipe recipe;
    private static Combination full;
    private static Preview preview;

    @BeforeAll
    static void combine() {
        List<FrameRequest> files = Stream.of("R", "G", "B")
                .map(band -> FrameRequest.of(Path.of("demo-data/jupiter/jupiter-" + band + ".fits")))
                .toList();
        recipe = Recipe.usual(Frames.found(files, Conventions.UNKNOWN), Body.JUPITER)
                .with(Place.at(new Site(46.2, 8.5, 480)));
        preview = Preview.rough(recipe, Progress.NONE);
        full = new Combiner(recipe).combine(Progress.NONE);
    }

    /** Once refined it has the same disks, so that all that differs is the size of its pixels. */
    @Test
    void refinedIsTheFullPictureBinned() {
        Preview.Picture quick =
                preview.refined(full).picture(recipe, Look.DEFAULT, Preview.Care.ALL_FRAMES, Progress.NONE);
        assertEquals(full.epoch(), quick.epoch());
        List<Plane> binned = full.cube().planes().stream()
                .map(p -> Binning.by(quick.factor(), p))
                .toList();
        for (int c = 0; c < 3; c++) {
            // Turning on pixels twice as large blurs detail a little, and the limb most.
            assertEquals(0, rmsApart(binned.get(c), quick.cube().planes().get(c), quick.disk()), 0.012);
        }
    }

    /** Within its edges it has the size of the full one, and the same caption letter by letter. */
    @Test
    void framedHasTheCaptionOfTheFullPicture() {
        Framing framing = new Framing(
                Framing.Orientation.NORTH_UP,
                OptionalDouble.of(0.25),
                OptionalDouble.empty(),
                Optional.of(new Framing.Canvas(450, 380)),
                true);
        Look l = Look.DEFAULT;
        Look look = new Look(l.white(), l.sharpening(), l.tone(), framing);
        Plane saved = new Outputs(List.of(), Optional.empty(), look, false, true)
                .picture(full)
                .get(0);
        Plane quick = preview.refined(full)
                .picture(recipe, look, Preview.Care.NEAREST_FRAMES, Progress.NONE)
                .framed(framing)
                .planes()
                .get(0);
        assertEquals(saved.width(), quick.width());
        assertEquals(saved.height(), quick.height());
        int strip = saved.width() * 35;
        int from = saved.data().length - strip;
        float[] letters = Arrays.copyOfRange(saved.data(), from, saved.data().length);
        assertArrayEquals(letters, Arrays.copyOfRange(quick.data(), from, quick.data().length));
        assertTrue(lit(letters) > 400);
    }

    private static int lit(float[] pixels) {
        int lit = 0;
        for (float v : pixels) {
            lit += v > 0.3 ? 1 : 0;
        }
        return lit;
    }

    /** A quick fit is good to some tenths of a pixel, its north to some tenths of a degree. */
    @Test
    void theRoughFitIsNearTheFineOne() {
        List<Disk> disks = preview.disks();
        assertEquals(3, disks.size());
        for (int i = 0; i < 3; i++) {
            Disk fine = full.frames().get(i).disk();
            assertEquals(fine.x(), disks.get(i).x(), 0.6);
            assertEquals(fine.y(), disks.get(i).y(), 0.6);
            assertEquals(fine.equatorialRadiusPx(), disks.get(i).equatorialRadiusPx(), 1.5);
            assertEquals(fine.northAngleDeg(), disks.get(i).northAngleDeg(), 0.6);
        }
    }

    /** Large frames are fitted on binned pixels; their disks lie where those of the small ones do, on pixels a third as wide. */
    @Test
    void largeFramesAreFittedQuickly(@TempDir Path folder) {
        List<FrameRequest> files = recipe.frames().all().stream()
                .map(f -> {
                    Path file = folder.resolve(f.head().file().getFileName());
                    FrameWriter.write(file, threeTimes(f.load().planes().get(0)), List.of(), false);
                    SheetRow row = new SheetRow(
                            file,
                            f.band().band().map(Band::name),
                            Optional.of(f.timing().span()),
                            "test");
                    return FrameRequest.of(row);
                })
                .toList();
        Recipe large = recipe.with(Frames.of(Frames.found(files, Conventions.UNKNOWN)));
        List<Disk> disks = Preview.rough(large, Progress.NONE).disks();
        for (int i = 0; i < 3; i++) {
            Disk fine = full.frames().get(i).disk();
            assertEquals(3 * fine.x() + 1, disks.get(i).x(), 2);
            assertEquals(3 * fine.y() + 1, disks.get(i).y(), 2);
            assertEquals(3 * fine.equatorialRadiusPx(), disks.get(i).equatorialRadiusPx(), 5);
            assertEquals(fine.northAngleDeg(), disks.get(i).northAngleDeg(), 2);
        }
    }

    private static Plane threeTimes(Plane plane) {
        Plane large = new Plane(3 * plane.width(), 3 * plane.height());
        for (int y = 0; y < large.height(); y++) {
            for (int x = 0; x < large.width(); x++) {
                large.set(x, y, plane.at(x / 3, y / 3));
            }
        }
        return large;
    }

    /** What the turner keeps from epoch to epoch must not show: back at the first epoch all is as it was. */
    @Test
    void keepsNothingOfAnotherEpoch() {
        Preview.Picture before = preview.picture(recipe, Look.DEFAULT, Preview.Care.ALL_FRAMES, Progress.NONE);
        Recipe later = recipe.at(Optional.of(full.epoch().plusSeconds(600)));
        Preview.Picture moved = preview.picture(later, Look.DEFAULT, Preview.Care.ALL_FRAMES, Progress.NONE);
        Preview.Picture after = preview.picture(recipe, Look.DEFAULT, Preview.Care.ALL_FRAMES, Progress.NONE);
        assertArrayEquals(before.cube().red().data(), after.cube().red().data());
        assertTrue(rmsApart(before.cube().red(), moved.cube().red(), before.disk()) > 0.02);
    }

    @Test
    void knowsWhoseFramesItHolds() {
        assertTrue(preview.holds(recipe.at(Optional.of(full.epoch().plusSeconds(5)))));
        Frames two = Frames.of(recipe.frames().all().subList(0, 2));
        assertFalse(preview.holds(recipe.with(two)));
    }

    /** Rms difference on the disk as a part of its mean. */
    private static double rmsApart(Plane a, Plane b, Disk disk) {
        double squares = 0;
        double sum = 0;
        int count = 0;
        for (int y = 0; y < Math.min(a.height(), b.height()); y++) {
            for (int x = 0; x < Math.min(a.width(), b.width()); x++) {
                if (Math.hypot(x - disk.x(), y - disk.y()) < 0.85 * disk.equatorialRadiusPx()) {
                    squares += Math.pow(a.at(x, y) - b.at(x, y), 2);
                    sum += a.at(x, y);
                    count++;
                }
            }
        }
        return Math.sqrt(squares / count) / (sum / count);
    }
}
