package org.epochrome.session.diagnose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.epochrome.image.Encoding;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.register.RegisteredFrames;
import org.epochrome.session.verdict.Confidence;
import org.epochrome.session.verdict.Diagnosis;
import org.epochrome.session.verdict.Remedy;
import org.epochrome.text.Message;

/** Diagnoses by what earlier stages of a session noticed. */
final class Hints {
    private static final Encoding USUAL = Encoding.power(2.2);

    private Hints() {}

    /** @param found what is known already, which may explain what they noticed */
    static List<Diagnosis> of(RegisteredFrames registered, Recipe recipe, List<Diagnosis> found) {
        List<Diagnosis> hints = new ArrayList<>();
        boolean moved = found.stream().anyMatch(d -> d.confidence() != Confidence.POSSIBLE);
        for (Message warning : registered.frames().warnings()) {
            switch (warning.key()) {
                case "processing.encoded" ->
                    hints.add(diagnosis(
                            Diagnosis.Cause.ENCODED,
                            Message.of("diagnosis.encoded", warning.values().get(0)),
                            Optional.of(new Remedy.Encoded(USUAL))));
                case "processing.sharpened", "processing.sharpenedFrames" ->
                    hints.add(diagnosis(
                            Diagnosis.Cause.SHARPENED,
                            Message.of("diagnosis.sharpened", warning.values().get(0)),
                            Optional.empty()));
                case "north.mountAltaz" -> {
                    if (!moved) {
                        hints.add(mount(Mount.ALTAZ));
                    }
                }
                case "north.mountEquatorial" -> {
                    if (!moved) {
                        hints.add(mount(Mount.EQUATORIAL));
                    }
                }
                default -> {}
            }
        }
        if (!moved) {
            SiteCheck.of(registered, recipe).ifPresent(hints::add);
        }
        return hints;
    }

    private static Diagnosis mount(Mount mount) {
        return diagnosis(
                Diagnosis.Cause.MOUNT,
                Message.of(mount == Mount.ALTAZ ? "diagnosis.altaz" : "diagnosis.equatorial"),
                Optional.of(new Remedy.OtherMount(mount)));
    }

    private static Diagnosis diagnosis(Diagnosis.Cause cause, Message words, Optional<Remedy> remedy) {
        return new Diagnosis(cause, List.of(), words, Confidence.LIKELY, remedy);
    }
}
