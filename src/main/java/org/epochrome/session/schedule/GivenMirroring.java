package org.epochrome.session.schedule;

import java.util.List;
import java.util.stream.IntStream;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Recipe;

/**
 * The user's settings of reflections: for single frames, or else for the session. If only some frames have one and the session has
 * none, the others are not mirrored.
 *
 * @param reference the setting for the reference frame
 * @param against for each exposure whether it is set to be mirrored relative to the reference frame
 */
public record GivenMirroring(Mirroring reference, List<Boolean> against) {
    public GivenMirroring {
        against = List.copyOf(against);
    }

    public static GivenMirroring of(Recipe recipe, Schedule schedule) {
        boolean some = schedule.exposures().stream()
                .anyMatch(e -> e.frame().givenMirrored().isPresent());
        Mirroring given = recipe.setup().mirroring();
        Mirroring others = some && given == Mirroring.AUTO ? Mirroring.NO : given;
        Mirroring reference = of(schedule.referenceExposure(), others);
        return new GivenMirroring(
                reference,
                schedule.exposures().stream()
                        .map(e -> of(e, others) != reference)
                        .toList());
    }

    private static Mirroring of(Exposure exposure, Mirroring others) {
        return exposure.frame()
                .givenMirrored()
                .map(m -> m ? Mirroring.YES : Mirroring.NO)
                .orElse(others);
    }

    public boolean against(int exposure) {
        return against.get(exposure);
    }

    /** Numbers of the exposures that are mirrored like the reference frame, as far as that is set. */
    public List<Integer> alike() {
        return IntStream.range(0, against.size())
                .filter(i -> !against(i))
                .boxed()
                .toList();
    }
}
