package org.epochrome.command.option;

import java.math.BigDecimal;
import java.util.Optional;
import org.epochrome.atmosphere.Air;
import org.epochrome.ephemeris.Site;
import org.epochrome.session.recipe.Place;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Where the telescope stood, and in what air. */
final class AirOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Mixin
    private PlaceOptions place;

    @Option(
            names = "--pressure",
            paramLabel = "HPA",
            description = "Air pressure at the site, not reduced to sea level, in hPa. Default: standard pressure at"
                    + " its height.")
    private Double pressure;

    @Option(
            names = "--temperature",
            paramLabel = "C",
            description = "Air temperature at the site, in degrees Celsius. Default: 10.")
    private Double temperature;

    @Option(
            names = "--humidity",
            paramLabel = "PCT",
            description = "Relative humidity at the site, in per cent. Default: 40.")
    private BigDecimal humidityPercent;

    /** The air of a session, overridden by the options given. */
    Place over(Place before) {
        Optional<Site> site = place.site().or(before::site);
        if (pressure == null && temperature == null && humidityPercent == null) {
            return new Place(site, before.air());
        }
        Air usual = before.air()
                .orElseGet(() -> Air.standardAt(site.map(Site::heightM).orElse(0.0)));
        try {
            return new Place(
                    site,
                    Optional.of(new Air(
                            pressure == null ? usual.pressureHpa() : pressure,
                            temperature == null ? usual.temperatureC() : temperature,
                            humidityPercent == null
                                    ? usual.relativeHumidity()
                                    : humidityPercent.movePointLeft(2).doubleValue())));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        }
    }
}
