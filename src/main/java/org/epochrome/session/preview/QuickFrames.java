package org.epochrome.session.preview;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.session.schedule.Schedule;

/** Which frames of a session a quick picture is made from, and on how coarse pixels they are fitted. */
final class QuickFrames {
    /** Frames at least twice as large are fitted on binned pixels. */
    private static final int FITTED_ACROSS_PX = 640;

    private QuickFrames() {}

    /** These very frames: what a header holds takes long to compare. */
    static Set<DatedFrame> same(Stream<DatedFrame> frames) {
        Set<DatedFrame> same = Collections.newSetFromMap(new IdentityHashMap<>());
        frames.forEach(same::add);
        return same;
    }

    /** Of each band the frames nearest to the epoch. */
    static Set<DatedFrame> nearest(Schedule all, int perBand) {
        Map<String, List<Exposure>> bands = all.exposures().stream()
                .sorted(Comparator.comparing(
                        e -> Duration.between(e.mid(), all.epoch()).abs()))
                .collect(Collectors.groupingBy(e -> e.band().name()));
        return same(bands.values().stream()
                .flatMap(band -> band.stream().limit(perBand))
                .map(Exposure::frame));
    }

    /** Of each band the exposure nearest to the epoch. */
    static Set<Integer> nearestOfEach(Schedule now) {
        Map<String, Integer> nearest = new LinkedHashMap<>();
        for (int i = 0; i < now.exposures().size(); i++) {
            nearest.merge(now.exposures().get(i).band().name(), i, (a, b) -> far(now, b) < far(now, a) ? b : a);
        }
        return Set.copyOf(nearest.values());
    }

    static long far(Schedule now, int index) {
        return Math.abs(
                Duration.between(now.exposures().get(index).mid(), now.epoch()).toMillis());
    }

    /** The recipe for some of its frames, at the epoch of all. */
    static Recipe few(Recipe recipe, Schedule all, Set<DatedFrame> some) {
        Frames f = recipe.frames();
        List<DatedFrame> kept = f.used().stream().filter(some::contains).toList();
        return recipe.with(f.with(kept).leavingOut(Set.of())).at(Optional.of(all.epoch()));
    }

    /** Large frames are fitted on binned pixels: a tenth of such a pixel is still less than one of the preview's. */
    static int beforeFitting(List<DatedFrame> frames) {
        int least = frames.stream()
                .mapToInt(f -> Math.min(f.head().width(), f.head().height()))
                .min()
                .orElseThrow();
        return Math.max(1, least / FITTED_ACROSS_PX);
    }

    static Recipe binned(Recipe recipe, int factor) {
        Setup setup = recipe.setup();
        OptionalDouble scale = setup.scaleArcsecPerPx().isPresent()
                ? OptionalDouble.of(factor * setup.scaleArcsecPerPx().getAsDouble())
                : OptionalDouble.empty();
        Map<Path, ManualDisk> disks = recipe.frames().disks().entrySet().stream()
                .collect(Collectors.toMap(
                        Map.Entry::getKey, held -> held.getValue().binned(factor)));
        return recipe.with(setup.with(Setup::scaleArcsecPerPx, scale))
                .with(recipe.frames().holding(disks));
    }
}
