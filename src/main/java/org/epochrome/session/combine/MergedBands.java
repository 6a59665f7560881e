package org.epochrome.session.combine;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.merge.Coverage;
import org.epochrome.colour.merge.FineBrightness;
import org.epochrome.colour.merge.Merge.Merged;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.session.recipe.Assignment;

/**
 * The bands of a picture, each merged from its frames.
 *
 * @param bands the merged bands by name, those of red, green and blue first
 * @param cube linear red, green and blue
 * @param brightness the fine brightness of another band, if one is assigned and there
 */
public record MergedBands(Map<String, Merged> bands, ColourCube cube, Optional<FineBrightness> brightness) {
    /**
     * The bands of a picture with the moons in it, and the globe alone.
     *
     * @param globe the bands without moons; the same if there are none
     */
    record WithGlobe(MergedBands picture, MergedBands globe) {}

    /** Merges the bands of an assignment. One that is missing is taken from those that are there, or from any frame at all. */
    public static MergedBands of(Assignment assignment, Merging merging, Progress progress) {
        return of(assignment, merging, merged(assignment, merging, merging::band, progress));
    }

    /** Merges the bands with and without moons. */
    static WithGlobe withGlobe(Assignment assignment, Merging merging, Progress progress) {
        Map<String, Merging.BandAndGlobe> both = merged(assignment, merging, merging::bandAndGlobe, progress);
        Map<String, Merged> bands = new LinkedHashMap<>();
        Map<String, Merged> globes = new LinkedHashMap<>();
        both.forEach((band, b) -> {
            bands.put(band, b.band());
            globes.put(band, b.globe());
        });
        return new WithGlobe(of(assignment, merging, bands), of(assignment, merging, globes));
    }

    private static <T> Map<String, T> merged(
            Assignment assignment, Merging merging, BiFunction<String, Progress, T> merge, Progress progress) {
        Map<String, T> bands = new LinkedHashMap<>();
        int done = 0;
        for (String band : assignment.bands()) {
            progress.check();
            double part = 1.0 / assignment.bands().size();
            if (merging.has(band)) {
                bands.put(band, merge.apply(band, progress.part(done * part, (done + 1) * part)));
            }
            done++;
        }
        if (bands.isEmpty()) {
            bands.put(merging.anyBand(), merge.apply(merging.anyBand(), progress));
        }
        return bands;
    }

    private static MergedBands of(Assignment assignment, Merging merging, Map<String, Merged> bands) {
        Merged some = bands.values().iterator().next();
        ColourCube cube = new ColourCube(
                mean(bands, assignment.red(), some),
                mean(bands, assignment.green(), some),
                mean(bands, assignment.blue(), some));
        Optional<FineBrightness> brightness = assignment
                .luminance()
                .filter(bands::containsKey)
                .map(band -> new FineBrightness(
                        bands.get(band).mean(), merging.bandBlurPx(band), colourBlurPx(assignment, merging, band)));
        return new MergedBands(bands, cube, brightness);
    }

    private static Plane mean(Map<String, Merged> bands, String band, Merged some) {
        return bands.getOrDefault(band, some).mean();
    }

    /** The mean blur of the colours that are there; if there are none, that of the luminance. */
    static double colourBlurPx(Assignment assignment, Merging merging, String luminance) {
        return assignment.colours().stream()
                .filter(merging::has)
                .mapToDouble(merging::bandBlurPx)
                .average()
                .orElseGet(() -> merging.bandBlurPx(luminance));
    }

    /** The picture that is finished: the colours with the fine brightness on them. */
    public ColourCube seen() {
        return brightness.map(b -> b.laidOn(cube)).orElse(cube);
    }

    /** How well each place of each band is founded. */
    Map<String, Coverage> coverage() {
        Map<String, Coverage> coverage = new LinkedHashMap<>();
        bands.forEach((band, merged) -> coverage.put(band, merged.coverage()));
        return coverage;
    }
}
