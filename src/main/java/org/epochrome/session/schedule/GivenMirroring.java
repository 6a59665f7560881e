package org.epochrome.session.schedule;

import java.util.List;
import java.util.stream.IntStream;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Recipe;

/**
 * What is said about reflections: of single frames, or else of the session. Where it is said of some frames and neither they nor
 * the session tell of the others, those are not mirrored.
 *
 * @param reference what is said of the reference frame
 * @param against for each exposure whether it is said to be mirrored against the reference frame
 */
public record GivenMirroring(Mirroring reference, List<Boolean> against) {
    public GivenMirroring {
        against = List.copyOf(against);
    }

    public static GivenMirroring of(Recipe recipe, Schedule schedule) {
        boolean some = schedule.exposures().stream()
                .anyMatch(e -> e.frame().saidMirrored().isPresent());
        Mirroring said = recipe.setup().mirroring();
        Mirroring others = some && said == Mirroring.AUTO ? Mirroring.NO : said;
        Mirroring reference = of(schedule.referenceExposure(), others);
        return new GivenMirroring(
                reference,
                schedule.exposures().stream()
                        .map(e -> of(e, others) != reference)
                        .toList());
    }

    private static Mirroring of(Exposure exposure, Mirroring others) {
        return exposure.frame()
                .saidMirrored()
                .map(m -> m ? Mirroring.YES : Mirroring.NO)
                .orElse(others);
    }

    public boolean against(int exposure) {
        return against.get(exposure);
    }

    /** Numbers of the exposures that are mirrored like the reference frame, as far as is said. */
    public List<Integer> alike() {
        return IntStream.range(0, against.size())
                .filter(i -> !against(i))
                .boxed()
                .toList();
    }
}
