package org.epochrome.session.preview;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.Sheet;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.Timetable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Two sets of the invented Mars, by the times in its sheet: 01:57 to 02:06 and 02:07 to 02:16, each R, G, B. */
class QuickFramesTest {
    private static Recipe recipe;

    @BeforeAll
    static void find() {
        List<FrameRequest> requests = Sheet.read(Path.of("demo-data/mars/session.csv")).rows().stream()
                .map(FrameRequest::of)
                .toList();
        recipe = Recipe.usual(Frames.found(requests, Conventions.UNKNOWN), Body.MARS);
    }

    private static Schedule at(String time) {
        return Schedule.of(recipe.at(Optional.of(Instant.parse("2022-10-26T" + time + "Z"))));
    }

    private static Set<String> names(Set<Integer> exposures, Schedule schedule) {
        Set<String> names = new TreeSet<>();
        exposures.forEach(i -> names.add(schedule.exposures().get(i).name()));
        return names;
    }

    @Test
    void theNearestOfEachBandFollowTheEpoch() {
        Schedule early = at("01:58:00");
        assertEquals(
                Set.of("mars-1-R.png", "mars-1-G.png", "mars-1-B.png"), names(QuickFrames.nearestOfEach(early), early));
        Schedule between = at("02:08:00");
        assertEquals(
                Set.of("mars-2-R.tif", "mars-2-G.tif", "mars-1-B.png"),
                names(QuickFrames.nearestOfEach(between), between));
    }

    @Test
    void fewFramesKeepTheEpochOfAll() {
        Schedule all = Schedule.of(recipe);
        Recipe few = QuickFrames.few(recipe, all, QuickFrames.nearest(all, 1));
        assertEquals(3, few.frames().used().size());
        assertEquals(all.epoch(), Schedule.of(few).epoch());
    }

    /** What an epoch does not change is taken over, not reckoned anew. */
    @Test
    void aTimetableThatIsChangedIsTheOneOfTheOtherEpoch() {
        Recipe later = recipe.at(Optional.of(Instant.parse("2022-10-26T02:30:00Z")));
        Timetable anew = Timetable.of(later);
        Timetable changed = Timetable.of(recipe).changed(later);
        assertEquals(anew, changed);
        Recipe elsewhere = later.with(Place.at(new org.epochrome.ephemeris.Site(40.4, -3.5, 700)));
        assertEquals(Timetable.of(elsewhere), changed.changed(elsewhere));
    }
}
