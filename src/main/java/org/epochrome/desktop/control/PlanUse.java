package org.epochrome.desktop.control;

import java.time.Duration;
import java.util.Map;
import org.epochrome.desktop.state.PlannedNight;
import org.epochrome.desktop.style.Texts;
import org.epochrome.io.identify.Conventions;

/** Compares frames with the plan of their night. */
public final class PlanUse {
    private final Workspace bench;
    private final Preferences preferences;

    public PlanUse(Workspace bench, Preferences preferences) {
        this.bench = bench;
        this.preferences = preferences;
    }

    /** Uses a plan: for the frames that are here, if they are of its night, and for those that come. */
    public void use(PlannedNight night) {
        preferences.setPlanned(night);
        bench.setBeginning(preferences.beginning());
        bench.draft().recipe().ifPresent(recipe -> {
            Map<String, Duration> lengths =
                    night.lengthsFor(recipe.body(), recipe.frames().all());
            Conventions said = recipe.frames().conventions();
            if (!lengths.isEmpty() && !lengths.equals(said.plannedLengths())) {
                bench.edit(
                        Texts.of("step.planned"),
                        d -> d.recipe(r -> r.with(r.frames().with(said.with(Conventions::plannedLengths, lengths)))));
            }
        });
    }
}
