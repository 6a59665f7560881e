package org.epochrome.session.combine;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.time.LeapSeconds;

/** What can be said of a recipe before any pixel is read. */
public final class RecipeCheck {
    /** The caution for a planet near the Sun. */
    public static final String SUN_CAUTION =
            "The planet was within 30 degrees of the Sun: never point optics near the Sun without the safeguards"
                    + " required by their manufacturer and your local rules.";

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
    List<String> warnings(AtmosphericDispersion sky) {
        List<String> warnings = new ArrayList<>();
        checkBands(warnings);
        warnAboutTheSky(sky, warnings);
        return warnings;
    }

    private void checkBands(List<String> warnings) {
        Assignment bands = recipe.assignment();
        List<String> missing = bands.bands().stream().filter(c -> !present(c)).toList();
        if (!missing.isEmpty()) {
            List<String> colours = bands.colours();
            throw new SessionRefused("a colour picture needs frames in " + colours.get(0) + ", " + colours.get(1)
                    + " and "
                    + colours.get(2)
                    + bands.luminance().map(l -> " (brightness from " + l + ")").orElse("")
                    + ", but there are none in " + String.join(" and ", missing)
                    + "; add one, or assign a frame with --red, --green or --blue");
        }
        schedule.exposures().stream()
                .map(e -> e.band().name())
                .filter(name -> !bands.bands().contains(name))
                .distinct()
                .forEach(name -> warnings.add("Frames in " + name
                        + " were fitted but are not used in the picture; use --assign or --luminance-from to include"
                        + " them."));
    }

    private boolean present(String band) {
        return schedule.exposures().stream().anyMatch(e -> e.band().name().equals(band));
    }

    private void warnAboutTheSky(AtmosphericDispersion sky, List<String> warnings) {
        if (recipe.corrections().dispersion() && recipe.place().site().isEmpty()) {
            warnings.add("Without --site atmospheric dispersion cannot be predicted; shifts come from limb and detail"
                    + " alone.");
        } else if (recipe.corrections().dispersion() && !sky.knows(schedule.aspect())) {
            warnings.add("The planet was too low for a reliable refraction; check the site and the times.");
        }
        if (!LeapSeconds.covers(schedule.epoch())) {
            warnings.add("The epoch is outside the leap-second table (to "
                    + LeapSeconds.validUntil().toString().substring(0, 10)
                    + "); a newer leap second would shift all times by one second, which is negligible for the"
                    + " planet's rotation.");
        }
        if (schedule.aspect().nearSun()) {
            warnings.add(SUN_CAUTION);
        }
    }
}
