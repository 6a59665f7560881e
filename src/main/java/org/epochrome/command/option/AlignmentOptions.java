package org.epochrome.command.option;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.text.Message;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How frames are aligned. */
final class AlignmentOptions {
    private final ChoiceOptions<Alignment> choices = new ChoiceOptions<>(Alignment.class);

    @Mixin
    final CommandSpec options = choices.spec();

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    /**
     * The alignment of a session, overridden by the options given.
     *
     * @throws ParameterException if a shift names neither a band nor a frame
     */
    Alignment over(Alignment before, List<DatedFrame> frames) {
        Map<String, PixelOffset> shifts = new LinkedHashMap<>(before.nudgesPx());
        Alignment typed = choices.over(before.with(Alignment::nudgesPx, Map.of()));
        typed.nudgesPx().forEach((name, offset) -> shifts.put(target(name, frames), offset));
        return typed.with(Alignment::nudgesPx, shifts);
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
                        spec.commandLine(), Message.text("option.shiftOf", name, String.join(", ", known))));
    }
}
