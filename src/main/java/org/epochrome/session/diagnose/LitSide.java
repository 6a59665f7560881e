package org.epochrome.session.diagnose;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.disk.start.DiskNotFound;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.SmearModel;
import org.epochrome.job.Progress;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.verdict.Confidence;
import org.epochrome.session.verdict.Diagnosis;
import org.epochrome.session.verdict.Remedy;
import org.epochrome.text.Message;

/** Whether the lit side of a gibbous body lies where the given north angle puts it. */
final class LitSide {
    /** Phase angle from which it is plain to see. */
    private static final double CLEAR_PHASE_DEG = 10;
    /** North by the lit side alone is no surer. */
    private static final double CLEAR_DEG = 40;
    /** The given north must leave so many times more. */
    private static final double WORSE = 1.1;

    private static final double QUARTER_DEG = 90;

    private LitSide() {}

    /** A diagnosis if north is given and lies elsewhere; empty if there is none, or if the lit side does not decide. */
    static Optional<Diagnosis> of(Recipe recipe, WorkingFrame reference, Progress progress) {
        OptionalDouble given = recipe.setup().northDeg();
        if (given.isEmpty() || reference.exposure().aspect().phaseAngleDeg() < CLEAR_PHASE_DEG) {
            return Optional.empty();
        }
        boolean mirrored = recipe.setup().mirroring() == Mirroring.YES;
        Optional<FittedDisk> free = fit(recipe, reference, mirrored, OptionalDouble.empty(), progress);
        Optional<FittedDisk> held = fit(recipe, reference, mirrored, given, progress);
        if (free.isEmpty()
                || (held.isPresent()
                        && held.get().residual() < WORSE * free.get().residual())) {
            return Optional.empty();
        }
        double off = Disk.wrapDeg(free.get().disk().northAngleDeg() - given.getAsDouble());
        if (Math.abs(off) < CLEAR_DEG) {
            return Optional.empty();
        }
        double turned = QUARTER_DEG * Math.rint(off / QUARTER_DEG);
        double there = Disk.wrapDeg(given.getAsDouble() + (turned == 0 ? off : turned));
        return Optional.of(new Diagnosis(
                Diagnosis.Cause.NORTH,
                List.of(),
                Message.of("diagnosis.northByLight", Math.abs(turned == 0 ? off : turned), there),
                Confidence.LIKELY,
                Optional.of(new Remedy.North(there))));
    }

    private static Optional<FittedDisk> fit(
            Recipe recipe, WorkingFrame frame, boolean mirrored, OptionalDouble north, Progress progress) {
        try {
            return Optional.of(new DiskFit(
                            frame.exposure().globe(),
                            recipe.body().belted(),
                            mirrored,
                            SmearModel.exactly(Smear.NONE),
                            north,
                            OptionalDouble.empty())
                    .rough(frame.pixels(), progress));
        } catch (DiskNotFound e) {
            return Optional.empty();
        }
    }
}
