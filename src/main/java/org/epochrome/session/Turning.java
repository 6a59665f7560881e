package org.epochrome.session;

import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.ephemeris.ZonalWind;
import org.epochrome.image.Plane;
import org.epochrome.job.Progress;
import org.epochrome.turn.Rotation;
import org.epochrome.turn.Turned;
import org.epochrome.turn.Turner;

/** Turns exposures to the epoch by the recipe's rotation. */
final class Turning {
    private final Recipe recipe;
    private final Aspect epoch;

    Turning(Recipe recipe, Schedule schedule) {
        this.recipe = recipe;
        this.epoch = schedule.aspect();
    }

    Rotation rotation(Aspect aspect) {
        if (!recipe.turn()) {
            return Rotation.none();
        }
        RotationSystem system = recipe.system().orElse(recipe.body().defaultSystem());
        return recipe.system().isPresent()
                ? Rotation.between(aspect, epoch, system)
                : ZonalWind.of(recipe.body())
                        .map(wind -> Rotation.between(
                                aspect, epoch, system, latitude -> wind.extraTurnDegPerDay(latitude, system)))
                        .orElseGet(() -> Rotation.between(aspect, epoch, system));
    }

    /** Degrees by which the globe turns from the exposure's middle to the epoch, in the sense of its rotation. */
    double turnedDeg(Aspect aspect) {
        double back = Math.toDegrees(rotation(aspect).backRad(0));
        return (recipe.body().prograde() ? -1 : 1) * back;
    }

    /** Angle by which the surface stands east of where it stands at the epoch, at the equator, whatever is turned. */
    double eastwardRad(Aspect aspect) {
        return Rotation.between(
                        aspect, epoch, recipe.system().orElse(recipe.body().defaultSystem()))
                .backRad(0);
    }

    /** The view of the globe at the epoch on a frame whose disk is given. */
    View viewAtEpoch(FittedDisk place) {
        return new View(Globe.of(epoch), place.disk());
    }

    Turned turn(Plane plane, FittedDisk fitted, Aspect aspect, View to, int width, int height, Progress progress) {
        return turn(plane, fitted, aspect, rotation(aspect), to, width, height, progress);
    }

    /** Moves only, whatever the recipe says: what a plain stack would do. */
    Turned move(Plane plane, FittedDisk fitted, Aspect aspect, View to, int width, int height, Progress progress) {
        return turn(plane, fitted, aspect, Rotation.none(), to, width, height, progress);
    }

    private static Turned turn(
            Plane plane,
            FittedDisk fitted,
            Aspect aspect,
            Rotation rotation,
            View to,
            int width,
            int height,
            Progress progress) {
        return new Turner(plane, fitted, Globe.of(aspect)).turn(to, width, height, rotation, progress);
    }
}
