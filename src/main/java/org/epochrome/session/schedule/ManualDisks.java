package org.epochrome.session.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.fit.DiskFit;
import org.epochrome.session.recipe.ManualDisk;
import org.epochrome.session.recipe.Recipe;

/** What the user holds of the disks by hand, by exposure. */
public final class ManualDisks {
    private final Recipe recipe;
    private final Schedule schedule;

    public ManualDisks(Recipe recipe, Schedule schedule) {
        this.recipe = recipe;
        this.schedule = schedule;
    }

    private Optional<ManualDisk> of(int index) {
        return recipe.frames().held(schedule.exposures().get(index));
    }

    public boolean any(int index) {
        return of(index).isPresent();
    }

    public OptionalDouble radiusPx(int index) {
        return of(index).map(d -> OptionalDouble.of(d.equatorialRadiusPx())).orElse(OptionalDouble.empty());
    }

    public OptionalDouble northDeg(int index) {
        return of(index).map(ManualDisk::northAngleDeg).orElse(OptionalDouble.empty());
    }

    /** The recipe, with north known if the reference frame's is held. */
    public Recipe recipe() {
        OptionalDouble north = northDeg(schedule.reference());
        return north.isPresent()
                ? recipe.with(recipe.setup()
                        .oriented(north.getAsDouble(), recipe.setup().mirroring()))
                : recipe;
    }

    /** A fit that does not look for the centre if it is held. */
    public DiskFit placed(int index, DiskFit fit) {
        return recipe.frames().placed(schedule.exposures().get(index))
                ? fit.centredAt(
                        of(index).orElseThrow().x(), of(index).orElseThrow().y())
                : fit;
    }

    /** Disks that were fitted, exactly as they are held. */
    public List<FittedDisk> kept(List<FittedDisk> fits) {
        List<FittedDisk> result = new ArrayList<>();
        for (int i = 0; i < fits.size(); i++) {
            FittedDisk fit = fits.get(i);
            Optional<ManualDisk> held = of(i);
            boolean placed = recipe.frames().placed(schedule.exposures().get(i));
            result.add(held.map(h -> fit.at(new Disk(
                            placed ? h.x() : fit.disk().x(),
                            placed ? h.y() : fit.disk().y(),
                            h.equatorialRadiusPx(),
                            h.northAngleDeg().orElse(fit.disk().northAngleDeg()),
                            fit.disk().mirrored())))
                    .orElse(fit));
        }
        return result;
    }
}
