package org.epochrome.session.schedule;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.epochrome.disk.AirFlattening;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.image.Band;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Recipe;

/**
 * When what was recorded: the exposures, the epoch they are brought to, and the one whose pixels the result lies on.
 *
 * @param exposures one for each plane of each frame
 * @param epoch instant of the result
 * @param aspect how the body stands then
 * @param reference index of the exposure that gives the result its place, scale and orientation
 */
public record Schedule(List<Exposure> exposures, Instant epoch, Aspect aspect, int reference) {
    public static Schedule of(Recipe recipe) {
        return of(recipe, List.of());
    }

    /**
     * The schedule of a recipe, computed quickly where it is close to an earlier one.
     *
     * @param known exposures of an earlier schedule; those of the same frame, body, site and air are taken over
     */
    public static Schedule of(Recipe recipe, List<Exposure> known) {
        IdentityHashMap<DatedFrame, List<Exposure>> before = new IdentityHashMap<>();
        for (Exposure e : known) {
            if (e.aspect().body() == recipe.body()
                    && e.aspect().site().equals(recipe.place().site())
                    && e.air().equals(flattening(recipe, e.aspect()))) {
                before.computeIfAbsent(e.frame(), f -> new ArrayList<>()).add(e);
            }
        }
        List<Exposure> exposures = new ArrayList<>();
        for (DatedFrame frame : recipe.frames().used()) {
            if (before.containsKey(frame)) {
                exposures.addAll(before.get(frame));
                continue;
            }
            Aspect aspect = Ephemeris.aspect(
                    recipe.body(), frame.timing().span().mid(), recipe.place().site());
            AirFlattening air = flattening(recipe, aspect);
            List<Band> planes = frame.band().planes();
            for (int i = 0; i < planes.size(); i++) {
                exposures.add(new Exposure(frame, i, planes.get(i), aspect, air));
            }
        }
        Instant epoch = recipe.epoch().orElseGet(() -> midway(exposures));
        return new Schedule(
                List.copyOf(exposures),
                epoch,
                Ephemeris.aspect(recipe.body(), epoch, recipe.place().site()),
                reference(exposures, epoch));
    }

    private static AirFlattening flattening(Recipe recipe, Aspect aspect) {
        return recipe.corrections().airFlattening() ? recipe.place().flattening(aspect) : AirFlattening.NONE;
    }

    /** Only some of the exposures, the reference among them. */
    public Schedule only(List<Integer> some) {
        return new Schedule(some.stream().map(exposures::get).toList(), epoch, aspect, some.indexOf(reference));
    }

    /** The exposures of some bands, as far as they count. */
    public List<List<Integer>> of(List<String> bands, IntPredicate counts) {
        return bands.stream()
                .distinct()
                .map(band -> IntStream.range(0, exposures.size())
                        .filter(counts)
                        .filter(i -> exposures.get(i).band().name().equals(band))
                        .boxed()
                        .toList())
                .toList();
    }

    public Exposure referenceExposure() {
        return exposures.get(reference);
    }

    /** Midway between the earliest and the latest middle, to the second. */
    private static Instant midway(List<Exposure> exposures) {
        Instant first = exposures.stream()
                .map(Exposure::mid)
                .min(Comparator.naturalOrder())
                .orElseThrow();
        Instant last = exposures.stream()
                .map(Exposure::mid)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        return first.plus(Duration.between(first, last).dividedBy(2))
                .plusMillis(500)
                .truncatedTo(ChronoUnit.SECONDS);
    }

    /** The G or L exposure nearest to the epoch, or the nearest of all. */
    private static int reference(List<Exposure> exposures, Instant epoch) {
        Comparator<Integer> nearest = Comparator.comparing(
                (Integer i) -> Duration.between(epoch, exposures.get(i).mid()).abs());
        return IntStream.range(0, exposures.size())
                .boxed()
                .filter(i -> exposures.get(i).band().name().equals("G")
                        || exposures.get(i).band().name().equals("L"))
                .min(nearest)
                .or(() -> IntStream.range(0, exposures.size()).boxed().min(nearest))
                .orElseThrow();
    }
}
