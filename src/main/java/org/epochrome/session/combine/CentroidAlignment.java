package org.epochrome.session.combine;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import org.epochrome.align.Witness;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.image.Plane;
import org.epochrome.session.combine.Combination.Quality;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.register.LightCentre;
import org.epochrome.session.register.Registration;
import org.epochrome.session.register.Registration.Registered;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.text.Message;

/**
 * The alignment of a simple stack, by the centroids of the frames' light. It replaces one by limb and detail that turns out
 * worse than that; the frames are turned to the epoch all the same.
 */
final class CentroidAlignment {
    private final Recipe recipe;
    private final Schedule schedule;
    private final List<Plane> planes;

    /** @param planes pixels of the exposures, with an even sky */
    CentroidAlignment(Recipe recipe, Schedule schedule, List<Plane> planes) {
        this.recipe = recipe;
        this.schedule = schedule;
        this.planes = planes;
    }

    /** Whether an alignment is worse than a simple stack, and not because a frame was put by hand where it is. */
    boolean isBetterThan(Quality quality) {
        return quality.after().exceeds(quality.before())
                && recipe.alignment().nudgesPx().isEmpty()
                && schedule.exposures().stream().noneMatch(recipe.frames()::placed);
    }

    /** The exposures with their centroids where the reference frame has its own; the reference stays. */
    List<Registered> of(List<Registered> registered) {
        int reference = schedule.reference();
        FittedDisk base = registered.get(reference).fitted();
        PixelOffset light = LightCentre.of(planes.get(reference), base);
        List<Registered> result = new ArrayList<>();
        for (int i = 0; i < registered.size(); i++) {
            Registered one = registered.get(i);
            result.add(i == reference ? one : moved(one, planes.get(i), light, base.disk()));
        }
        return result;
    }

    private static Registered moved(Registered one, Plane plane, PixelOffset light, Disk output) {
        Disk disk = one.fitted().disk();
        PixelOffset own = LightCentre.of(plane, one.fitted());
        PixelOffset there = Registration.carried(light, output, disk);
        PixelOffset by = new PixelOffset(own.x() - there.x(), own.y() - there.y());
        double doubt = Math.hypot(by.x(), by.y()) * output.equatorialRadiusPx() / disk.equatorialRadiusPx();
        return new Registered(
                one.fitted().at(disk.movedBy(by.x(), by.y())),
                new PixelOffset(one.correction().x() + by.x(), one.correction().y() + by.y()),
                one.limb(),
                one.detail(),
                one.physics(),
                one.passband(),
                one.place().withAddedSigma(doubt),
                EnumSet.allOf(Witness.class));
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
