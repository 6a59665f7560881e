package org.epochrome.command.option;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.epochrome.image.Band;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.text.Message;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Which bands make the picture. */
final class AssignmentOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--assign", paramLabel = "R=BAND,G=BAND,B=BAND", split = ",")
    private Map<String, String> assign = new LinkedHashMap<>();

    @Option(names = "--luminance-from", paramLabel = "BAND|none")
    private String luminanceFrom;

    /** The assignment of a session, overridden by the options given. */
    Assignment over(Assignment before) {
        Map<String, String> bands =
                new LinkedHashMap<>(Map.of("R", before.red(), "G", before.green(), "B", before.blue()));
        assign.forEach((colour, band) -> {
            if (bands.replace(colour.strip().toUpperCase(Locale.ROOT), bandName(band)) == null) {
                throw new ParameterException(spec.commandLine(), Message.text("option.assign", colour));
            }
        });
        Optional<String> luminance = luminanceFrom == null
                ? before.luminance().filter(l -> assign.isEmpty() || !bands.containsValue(l))
                : Optional.of(bandName(luminanceFrom)).filter(l -> !l.equalsIgnoreCase("none"));
        return new Assignment(bands.get("R"), bands.get("G"), bands.get("B"), luminance);
    }

    /** The short name of a known band in any case, or a name of the user's as it is. */
    private static String bandName(String text) {
        return Band.known(text).map(Band::name).orElse(text.strip());
    }
}
