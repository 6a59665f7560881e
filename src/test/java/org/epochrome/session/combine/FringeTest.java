package org.epochrome.session.combine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.epochrome.disk.Disk;
import org.epochrome.image.Band;
import org.epochrome.session.InventedNight;
import org.epochrome.session.LowNight;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.combine.Combination.Quality;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.register.Misalignment;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The figure for misalignment against the true disks of a scene of the demo's ray-caster. */
@Tag("session")
class FringeTest {
    @TempDir
    private static Path folder;

    private static InventedNight night;

    @BeforeAll
    static void photograph() {
        night = new InventedNight(folder);
        night.add("R.tif", InventedNight.shot(Band.R, -60, InventedNight.camera(), 80, 1));
        night.add("G.tif", InventedNight.shot(Band.G, 0, InventedNight.camera(), 80, 2));
        night.add("B.tif", InventedNight.shot(Band.B, 60, InventedNight.camera(), 80, 3));
    }

    /** The project's promise: within 0.08 px of the truth, or 1.2 times the truth. Measured: 0.00, standard error 0.05. */
    @Test
    void theFigureIsTheTruth() {
        Combination c = InventedNight.combine(night.recipe());
        Quality quality = c.quality();
        assertTrue(quality.after().known());
        double truth = truthPx(c);
        assertEquals(truth, quality.after().px(), Math.max(0.08, 1.2 * truth));
        assertTrue(
                quality.after().sigmaPx() < 0.15,
                "standard error " + quality.after().sigmaPx());
        assertEquals("aligned", quality.alignment());
        // In a minute the globe turns by 0.6 degrees: 3/4 of 66 px radius times that is 0.5 px.
        assertEquals(0.5, quality.before().px(), 0.2);
    }

    /** One of two bands moved by half a pixel: by definition the rms is 0.5 / sqrt(2) = 0.354 px. */
    @Test
    void aFrameMovedByHandShows() {
        Alignment moved = new Alignment(
                Alignment.USUAL.witnesses(), Map.of("R", new PixelOffset(0.3, 0.4)), Alignment.USUAL.freeScale());
        Combination c = InventedNight.combine(night.recipe().with(moved));
        Misalignment after = c.quality().after();
        assertEquals(0.5 / Math.sqrt(2), after.px(), Math.max(0.08, 2 * after.sigmaPx()));
        assertEquals("R", after.worstBand());
        assertEquals("misaligned", c.quality().alignment());
        assertTrue(
                c.warnings().stream().anyMatch(w -> w.toString().startsWith("The colours are misaligned by")),
                c.warnings().toString());
    }

    /** Frames moved by more than they would be off in a simple stack: worse than that, and said so. */
    @Test
    void worseThanASimpleStackIsSaid() {
        Alignment moved = new Alignment(
                Alignment.USUAL.witnesses(),
                Map.of("R", new PixelOffset(4, 0), "B", new PixelOffset(-4, 0)),
                Alignment.USUAL.freeScale());
        Combination c = InventedNight.combine(night.recipe().with(moved));
        assertEquals("worse than a simple stack", c.quality().alignment());
        assertTrue(
                c.warnings().stream().anyMatch(w -> w.toString().contains("worse than in a simple stack")),
                c.warnings().toString());
    }

    private static double truthPx(Combination c) {
        FrameResult green = LowNight.result(c, Band.G);
        double sum = 0;
        for (Band band : new Band[] {Band.R, Band.B}) {
            FrameResult f = LowNight.result(c, band);
            sum += Math.pow(off(f, true) - off(green, true), 2) + Math.pow(off(f, false) - off(green, false), 2);
        }
        return Math.sqrt(sum / 2);
    }

    private static double off(FrameResult f, boolean right) {
        Disk disk = f.disk();
        return right ? disk.x() - night.disk(f).x() : disk.y() - night.disk(f).y();
    }
}
