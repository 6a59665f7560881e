package org.epochrome.session.combine;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.text.Message;
import org.epochrome.time.LeapSeconds;

/** What can be said of a recipe before any pixel is read. */
public final class RecipeCheck {
    /** The caution for a planet near the Sun. */
    public static final Message SUN_CAUTION = Message.of("check.nearSun");

    /** Capture programs end a little late. */
    private static final double TOLERATED = 1.1;

    private final Recipe recipe;
    private final Schedule schedule;

    RecipeCheck(Recipe recipe, Schedule schedule) {
        this.recipe = recipe;
        this.schedule = schedule;
    }

    /**
     * What the user should know.
     *
     * @throws SessionRefused if a band of the picture has no frame
     */
    List<Message> warnings(AtmosphericDispersion sky) {
        List<Message> warnings = new ArrayList<>();
        checkBands(warnings);
        warnAboutTheSky(sky, warnings);
        warnAboutLengths(warnings);
        return warnings;
    }

    private void checkBands(List<Message> warnings) {
        Assignment bands = recipe.assignment();
        List<String> missing = bands.bands().stream().filter(c -> !present(c)).toList();
        if (!missing.isEmpty()) {
            List<String> colours = bands.colours();
            throw new SessionRefused(Message.of(
                    "check.noFrames",
                    colours.get(0),
                    colours.get(1),
                    colours.get(2),
                    bands.luminance()
                            .<Object>map(l -> Message.of("check.brightnessFrom", l))
                            .orElse(""),
                    missing.stream()
                            .<Object>map(band -> band)
                            .reduce((a, b) -> Message.of("check.and", a, b))
                            .orElseThrow()));
        }
        schedule.exposures().stream()
                .map(e -> e.band().name())
                .filter(name -> !bands.bands().contains(name))
                .distinct()
                .forEach(name -> warnings.add(Message.of("check.unusedBand", name)));
    }

    /** Longest recordings by band that exceed the plan. */
    private void warnAboutLengths(List<Message> warnings) {
        Map<String, Duration> planned = recipe.frames().conventions().plannedLengths();
        Map<String, Duration> longest = new TreeMap<>();
        for (Exposure e : schedule.exposures()) {
            Duration length = e.frame().timing().span().duration();
            longest.merge(e.band().name(), length, (a, b) -> a.compareTo(b) > 0 ? a : b);
        }
        longest.forEach((band, length) -> Optional.ofNullable(planned.get(band))
                .filter(plan -> length.toMillis() > TOLERATED * plan.toMillis())
                .ifPresent(plan -> warnings.add(
                        Message.of("check.longerThanPlanned", band, length.toSeconds(), plan.toSeconds()))));
    }

    private boolean present(String band) {
        return schedule.exposures().stream().anyMatch(e -> e.band().name().equals(band));
    }

    private void warnAboutTheSky(AtmosphericDispersion sky, List<Message> warnings) {
        if (recipe.corrections().dispersion() && recipe.place().site().isEmpty()) {
            warnings.add(Message.of("check.noSite"));
        } else if (recipe.corrections().dispersion() && !sky.knows(schedule.aspect())) {
            warnings.add(Message.of("check.tooLow"));
        }
        if (!LeapSeconds.covers(schedule.epoch())) {
            warnings.add(Message.of(
                    "check.leapSeconds", LeapSeconds.validUntil().toString().substring(0, 10)));
        }
        if (schedule.aspect().nearSun()) {
            warnings.add(SUN_CAUTION);
        }
    }
}
