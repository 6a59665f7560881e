package org.epochrome.command.option;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import org.epochrome.atmosphere.Air;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.recipe.Place;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Where the telescope stood, and in what air. */
public final class AirOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Mixin
    private PlaceOptions place;

    /** Per cent are moved by decimal digits, so that no digit changes. */
    private final ChoiceOptions<Air> choices = new ChoiceOptions<>(Air.class, Map.of("humidity", BigDecimal.class));

    @Mixin
    final CommandSpec air = choices.spec();

    /** The site and the air of a session, overridden by the options given. */
    public Place over(Place before) {
        Optional<Site> site = place.site().or(before::site);
        if (!choices.isGiven()) {
            return new Place(site, before.air());
        }
        Air usual = before.air()
                .orElseGet(() -> Air.standardAt(site.map(Site::heightM).orElse(0.0)));
        try {
            Air typed = choices.over(usual);
            double humidity = choices.given("humidity", BigDecimal.class)
                    .map(percent -> percent.movePointLeft(2).doubleValue())
                    .orElse(typed.relativeHumidity());
            return new Place(site, Optional.of(typed.with(Air::relativeHumidity, humidity)));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }
}
