package org.epochrome.session.combine;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import org.epochrome.align.Witness;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.session.combine.Combination.Quality;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.register.LightCentre;
import org.epochrome.session.register.RegisteredFrames;
import org.epochrome.session.register.Registration;
import org.epochrome.session.register.Registration.Registered;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/**
 * The alignment of a simple stack, by the centroids of the frames' light. It replaces one by limb and detail that turns out
 * worse than that; the frames are turned to the epoch all the same.
 */
final class CentroidAlignment {
    private final Recipe recipe;
    private final RegisteredFrames registered;

    /** @param registered frames with an even sky, by limb and detail */
    CentroidAlignment(Recipe recipe, RegisteredFrames registered) {
        this.recipe = recipe;
        this.registered = registered;
    }

    /** Whether an alignment is worse than a simple stack, and not because a frame was put by hand where it is. */
    boolean isBetterThan(Quality quality) {
        return quality.after().exceeds(quality.before())
                && recipe.alignment().nudgesPx().isEmpty()
                && registered.frames().all().stream()
                        .noneMatch(f -> recipe.frames().placed(f.exposure()));
    }

    /** The frames with their centroids where the reference frame has its own; the reference stays. */
    RegisteredFrames aligned() {
        WorkingFrames frames = registered.frames();
        WorkingFrame reference = frames.reference();
        Disk output = reference.disk().disk();
        PixelOffset light = LightCentre.of(reference.pixels(), reference.disk());
        List<FittedDisk> places = new ArrayList<>();
        List<Registered> measured = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            WorkingFrame frame = frames.get(i);
            Registered before = registered.measured().get(i);
            Disk disk = frame.disk().disk();
            PixelOffset by = i == frames.schedule().reference() ? new PixelOffset(0, 0) : offset(frame, light, output);
            double doubt = by.lengthPx() * output.equatorialRadiusPx() / disk.equatorialRadiusPx();
            places.add(frame.disk().at(disk.movedBy(by.x(), by.y())));
            measured.add(
                    i == frames.schedule().reference()
                            ? before
                            : new Registered(
                                    new PixelOffset(
                                            before.correction().x() + by.x(),
                                            before.correction().y() + by.y()),
                                    before.limb(),
                                    before.detail(),
                                    before.physics(),
                                    before.passband(),
                                    before.place().withAddedSigma(doubt),
                                    EnumSet.allOf(Witness.class)));
        }
        return new RegisteredFrames(frames.at(places), measured);
    }

    /** How far a frame's centroid lies off that of the reference frame. */
    private static PixelOffset offset(WorkingFrame frame, PixelOffset light, Disk output) {
        PixelOffset own = LightCentre.of(frame.pixels(), frame.disk());
        PixelOffset there = Registration.carried(light, output, frame.disk().disk());
        return new PixelOffset(own.x() - there.x(), own.y() - there.y());
    }

    /** What was done, a sentence. */
    static Message sentence(Quality discarded, Quality quality) {
        return Message.of(
                "align.byCentroids",
                discarded.after().px(),
                discarded.before().px(),
                quality.after().known() ? quality.after().text() : Message.of("align.notMeasured"));
    }
}
