package org.epochrome.command.plan;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.epochrome.command.option.AirOptions;
import org.epochrome.command.option.Texts;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.plan.PlanSettings;
import org.epochrome.plan.night.Feature;
import org.epochrome.plan.night.Horizon;
import org.epochrome.plan.night.SkyEvent;
import org.epochrome.session.recipe.Place;
import org.epochrome.text.Message;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What a plan is made for. */
public final class PlanOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = {"-b", "--body"},
            paramLabel = "PLANET",
            required = true,
            converter = Texts.Planet.class)
    private Body body;

    @Option(names = "--date", paramLabel = "YYYY-MM-DD", required = true, converter = SkyTexts.Date.class)
    private LocalDate date;

    @Option(names = "--utc-offset", paramLabel = "HH:MM", converter = Texts.Offset.class)
    private ZoneOffset offset;

    @Mixin
    private AirOptions air;

    @Option(names = "--horizon", paramLabel = "DEG|FILE.csv")
    private String horizon;

    @Mixin
    private TelescopeOptions telescope;

    @Option(names = "--bands", paramLabel = "BAND", split = ",", defaultValue = "R,G,B")
    private List<String> bands = new ArrayList<>();

    @Option(
            names = "--passband",
            paramLabel = "BAND=FROM-TO",
            converter = {Texts.Capitals.class, Texts.Edges.class})
    private Map<String, Passband> passbands = new LinkedHashMap<>();

    @Option(names = "--smear", paramLabel = "PART")
    private double smearPart = PlanSettings.USUAL_SMEAR_PART;

    @Option(names = "--feature", paramLabel = "NAME=SYSTEM:LON")
    private List<String> features = new ArrayList<>();

    @Option(names = "--events", paramLabel = "KIND", split = ",", converter = SkyTexts.EventKind.class)
    private List<SkyEvent.Kind> kinds = new ArrayList<>();

    /** The settings that were typed. */
    public PlanSettings settings() {
        Place place = air.over(Place.UNKNOWN);
        Site site =
                place.site().orElseThrow(() -> new ParameterException(spec.commandLine(), Message.text("plan.noSite")));
        try {
            return new PlanSettings(
                    body,
                    site,
                    date,
                    Optional.ofNullable(offset),
                    horizon == null ? Horizon.level(0) : SkyTexts.horizon(horizon),
                    place.airAt(site),
                    telescope.telescope(),
                    telescope.seeing(),
                    smearPart,
                    bands.stream().map(this::band).toList(),
                    features.stream().map(f -> Feature.parse(f, body)).toList(),
                    kinds.isEmpty() ? EnumSet.allOf(SkyEvent.Kind.class) : Set.copyOf(kinds));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage(), e);
        }
    }

    /** The file of the horizon, if it is one. */
    public List<Path> inputs() {
        return horizon == null || !Files.exists(Path.of(horizon)) ? List.of() : List.of(Path.of(horizon));
    }

    private Band band(String text) {
        String name = text.strip().toUpperCase(Locale.ROOT);
        Optional<Band> known = Band.known(name);
        return Optional.ofNullable(passbands.get(name))
                .map(passband -> new Band(name, passband))
                .or(() -> known)
                .orElseThrow(() -> new ParameterException(spec.commandLine(), Message.text("plan.noBand", text)));
    }
}
