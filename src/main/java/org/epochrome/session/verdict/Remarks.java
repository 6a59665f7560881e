package org.epochrome.session.verdict;

import java.util.List;
import java.util.Set;
import org.epochrome.text.Message;

/**
 * What the user should know, by its weight.
 *
 * @param warnings what may be wrong and deserves a look
 * @param information what was found or decided and is probably right
 */
public record Remarks(List<Message> warnings, List<Message> information) {
    /** Messages that state what was found; everything else is a warning. */
    private static final Set<String> INFORMATION = Set.of(
            "check.unusedBand",
            "check.noSite",
            "check.leapSeconds",
            "north.framesMirrored",
            "north.upsideDown",
            "north.headers",
            "north.byRotation",
            "north.byMotion",
            "north.byMotionMirrored",
            "north.limbCorrected",
            "north.meridianFlip",
            "north.mirroringUnknown",
            "moon.leftOut",
            "scale.measured",
            "result.lessSharpLuminance");

    public Remarks {
        warnings = List.copyOf(warnings);
        information = List.copyOf(information);
    }

    /** These messages, in their order. */
    public static Remarks of(List<Message> messages) {
        return new Remarks(
                messages.stream().filter(m -> !INFORMATION.contains(m.key())).toList(),
                messages.stream().filter(m -> INFORMATION.contains(m.key())).toList());
    }
}
