package org.epochrome.command.option;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.epochrome.atmosphere.Spectrum;
import org.epochrome.disk.DispersionDeconvolution.Extent;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.io.read.ResponseCurve;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Light;
import org.epochrome.text.Message;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What is corrected in the frames, and by which laws. */
final class CorrectionOptions {
    private static final String SYSTEM = "rotation-system";
    private static final String RESPONSE = "response";

    private final ChoiceOptions<Corrections> choices = new ChoiceOptions<>(
            Corrections.class,
            Map.of(SYSTEM, String.class, "unsmear", Boolean.class, "light", Light.class, RESPONSE, String.class));

    @Mixin
    final CommandSpec options = choices.spec();

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    /** The corrections of a session, overridden by the options given. */
    Corrections over(Corrections before, Body body) {
        Optional<String> system = choices.given(SYSTEM, String.class);
        choices.given("rotation-period", Double.class)
                .filter(period -> !(period > 0 && period < Double.POSITIVE_INFINITY))
                .ifPresent(period -> {
                    throw new ParameterException(spec.commandLine(), Message.text("option.rotationPeriod", period));
                });
        // A system that is typed now overrides a period of before, and a light a response.
        Corrections base = system.map(word -> before.by(system(word, body))).orElse(before);
        Corrections c = choices.over(base);
        c = c.with(
                Corrections::unsmear,
                choices.given("unsmear", Boolean.class)
                        .map(all -> all ? Extent.ALL : Extent.NONE)
                        .orElse(c.unsmear()));
        Optional<Light> light = choices.given("light", Light.class);
        if (light.isPresent()) {
            c = c.with(Corrections::response, Optional.empty()).with(Corrections::light, light.get());
        }
        Optional<String> response = choices.given(RESPONSE, String.class);
        return response.isPresent() ? c.with(Corrections::response, Optional.of(curve(response.get()))) : c;
    }

    private Optional<RotationSystem> system(String system, Body planet) {
        if (system.equalsIgnoreCase("zonal")) {
            return Optional.empty();
        }
        return Optional.of(planet.systems().stream()
                .filter(s -> s.key().equalsIgnoreCase(system))
                .findFirst()
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(),
                        Message.text(
                                "option.rotationSystem",
                                planet.displayName(),
                                system,
                                planet.systems().stream()
                                        .map(RotationSystem::key)
                                        .collect(Collectors.joining(", "))))));
    }

    /** The table of the camera's response, if one was named. */
    Optional<Path> table() {
        return choices.given(RESPONSE, String.class)
                .filter(r -> !r.contains("="))
                .map(Path::of);
    }

    private List<Spectrum.Point> curve(String response) {
        Optional<Path> table = table();
        if (table.isPresent()) {
            return ResponseCurve.read(table.get()).curve();
        }
        try {
            List<Spectrum.Point> points = new ArrayList<>();
            for (String point : response.split(",", -1)) {
                String[] pair = point.split("=", -1);
                points.add(new Spectrum.Point(Double.parseDouble(pair[0]), Double.parseDouble(pair[1])));
            }
            return Spectrum.seenBy(points).curve();
        } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
            throw new ParameterException(spec.commandLine(), Message.text("option.response", response), e);
        }
    }
}
