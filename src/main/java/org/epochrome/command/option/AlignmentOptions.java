package org.epochrome.command.option;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.epochrome.align.Witness;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.PixelOffset;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How frames are aligned. */
final class AlignmentOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--witness",
            split = ",",
            paramLabel = "limb|detail|physics",
            description = "What the frames are aligned by (comma-separated): limb, the fitted disk; detail, the surface"
                    + " markings after turning; physics, the predicted dispersion between the planes of one"
                    + " colour frame. Default: all, weighted by their uncertainty.")
    private Set<Witness> witnesses;

    @Option(
            names = "--shift",
            paramLabel = "WHAT=X,Y",
            converter = {Texts.Plain.class, Texts.Pixels.class},
            description =
                    "Additional shift of a band (B) or a frame (its file name), in pixels of the result, right and"
                            + " down (repeatable).")
    private Map<String, PixelOffset> shifts = new LinkedHashMap<>();

    @Option(
            names = "--free-scale",
            negatable = true,
            description = "Allow bands to differ slightly in scale and rotation, as with filters that focus"
                    + " differently.")
    private Boolean freeScale;

    /**
     * The alignment of a session, overridden by the options given.
     *
     * @throws ParameterException if a shift names neither a band nor a frame
     */
    Alignment over(Alignment before, List<DatedFrame> frames) {
        Map<String, PixelOffset> named = new LinkedHashMap<>(before.nudgesPx());
        shifts.forEach((name, offset) -> named.put(target(name, frames), offset));
        return new Alignment(
                witnesses == null ? before.witnesses() : witnesses,
                named,
                freeScale == null ? before.freeScale() : freeScale);
    }

    private String target(String name, List<DatedFrame> frames) {
        Set<String> known = new LinkedHashSet<>();
        for (DatedFrame frame : frames) {
            known.addAll(frame.band().band().map(b -> List.of(b.name())).orElse(List.of("R", "G", "B")));
            known.add(frame.head().file().getFileName().toString());
        }
        return known.stream()
                .filter(k -> k.equalsIgnoreCase(name))
                .findFirst()
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(),
                        "--shift names '" + name + "', which is neither a band nor a frame of this session; use one of "
                                + String.join(", ", known) + "."));
    }
}
