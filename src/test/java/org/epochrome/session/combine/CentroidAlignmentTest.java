package org.epochrome.session.combine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.epochrome.align.Witness;
import org.epochrome.demo.Surfaces;
import org.epochrome.image.Band;
import org.epochrome.session.InventedNight;
import org.epochrome.session.LowNight;
import org.epochrome.session.LowNight.Evening;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Recipe;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A frame of a colour camera at 25 degrees of altitude whose red and blue planes were exchanged: dispersion is corrected the
 * wrong way, and colours would end 4 and 6 px apart if nothing else were asked.
 */
@Tag("session")
class CentroidAlignmentTest {
    @TempDir
    private Path folder;

    private Combination combined(Alignment alignment) {
        LowNight night = new LowNight(Evening.JUPITER, Surfaces.jupiter(), 25, 2, 72);
        LowNight.BANDS.forEach(band -> night.take(band, 0, night.camera().offsetBy(0.4, -1.2)));
        Recipe recipe = night.inOneFile(
                folder, List.of(night.noisy(Band.B, 100, 3), night.noisy(Band.G, 100, 2), night.noisy(Band.R, 100, 1)));
        return InventedNight.combine(recipe.with(alignment));
    }

    /** The centroids of one planet's light lie alike in all bands: what is left is how bands differ, some tenths of a pixel. */
    @Test
    void takesThePlaceOfAWorseAlignment() {
        Combination c = combined(new Alignment(Set.of(Witness.PHYSICS), Map.of(), false));
        Combination.Quality quality = c.quality();
        assertFalse(quality.after().exceeds(quality.before()), quality.toString());
        assertTrue(quality.after().px() < 0.5, quality.toString());
        assertEquals(
                1,
                c.warnings().stream()
                        .filter(w -> w.toString().contains("aligned by the centroids of their light"))
                        .count(),
                c.warnings().toString());
        assertEquals(
                Set.of(Witness.values()), LowNight.result(c, Band.R).witnesses().leftOut());
    }

    /** What a user moved by hand stays there. */
    @Test
    void leavesFramesAloneThatWereMovedByHand() {
        Combination c = combined(
                new Alignment(Set.of(Witness.PHYSICS), Map.of("colour.fits#R", new PixelOffset(0.5, 0)), false));
        assertTrue(
                c.quality().after().exceeds(c.quality().before()), c.quality().toString());
        assertFalse(
                c.warnings().stream().anyMatch(w -> w.toString().contains("centroids")),
                c.warnings().toString());
    }
}
