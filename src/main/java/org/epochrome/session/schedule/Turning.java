package org.epochrome.session.schedule;

import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.job.Progress;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.turn.Rotation;
import org.epochrome.turn.Turned;
import org.epochrome.turn.Turner;

/** Turns exposures to the epoch by the recipe's rotation. */
public final class Turning {
    private static final double CLOSE = 1.02;
    private static final int CLOSE_MARGIN_PX = 6;
    /** So far off a pixel hardly changes a cubic spline: by 1e-9 of its value. */
    private static final int SPLINE_REACH_PX = 16;

    private final Recipe recipe;
    private final Aspect epoch;

    public Turning(Recipe recipe, Schedule schedule) {
        this.recipe = recipe;
        this.epoch = schedule.aspect();
    }

    /** A frame's turner, which knows whether the body has belts. */
    public static Turner turner(WorkingFrame frame) {
        Exposure exposure = frame.exposure();
        return new Turner(
                frame.pixels(),
                frame.disk(),
                exposure.globe(),
                exposure.aspect().body().belted());
    }

    /** How far the surface turns from an exposure's middle to the epoch; not at all if the recipe does not turn. */
    public Rotation rotation(Exposure exposure) {
        return recipe.corrections().turn() ? rotationOfGlobe(exposure) : Rotation.none();
    }

    /** How far the surface turns from an exposure's middle to the epoch, even if the recipe does not turn. */
    public Rotation rotationOfGlobe(Exposure exposure) {
        return RotationLaw.of(recipe, exposure.band().name()).between(exposure.aspect(), epoch);
    }

    /** How far the surface in the picture turns between two aspects. */
    public static Rotation rotation(Recipe recipe, Aspect aspect, Aspect epoch) {
        return RotationLaw.of(recipe, recipe.assignment().green()).between(aspect, epoch);
    }

    /** Degrees by which the equator turns from the exposure's middle to the epoch, in the sense of its rotation. */
    public double turnedDeg(Exposure exposure) {
        double back = Math.toDegrees(rotation(exposure).backRad(0));
        return (recipe.body().prograde() ? -1 : 1) * back;
    }

    /** Angle by which the equator's surface stands east of where it stands at the epoch, whatever is turned. */
    public double eastwardRad(Exposure exposure) {
        return rotationOfGlobe(exposure).backRad(0);
    }

    /** The view of the globe at the epoch on a frame whose disk is given. */
    public View viewAtEpoch(FittedDisk place) {
        return new View(Globe.of(epoch), place.disk());
    }

    /** A window on the output that holds the disk and little more: where detail is compared. */
    public CloseUp closeUp(FittedDisk reference) {
        Disk disk = reference.disk();
        double reach = CLOSE * disk.equatorialRadiusPx() + CLOSE_MARGIN_PX;
        int left = (int) Math.floor(disk.x() - reach);
        int top = (int) Math.floor(disk.y() - reach);
        int size = (int) Math.ceil(2 * reach) + 1;
        return new CloseUp(new View(Globe.of(epoch), disk.movedBy(-left, -top)), size, size);
    }

    /**
     * What to turn to: a view of the globe at the epoch, and the size of its image.
     *
     * @param view place, scale and orientation of the disk
     * @param width pixels
     * @param height pixels
     */
    public record CloseUp(View view, int width, int height) {
        /** This close-up on pixels binned by a factor. */
        public CloseUp binned(int factor, FittedDisk like) {
            return new CloseUp(
                    new View(view.globe(), like.at(view.disk()).binned(factor).disk()),
                    width / factor,
                    height / factor);
        }
    }

    /** A frame turned (or, for a plain stack, only moved) to a window. */
    public Turned turned(WorkingFrame frame, CloseUp to, boolean turned, Progress progress) {
        Rotation rotation = turned ? rotation(frame.exposure()) : Rotation.none();
        Plane plane = frame.pixels();
        Region near = near(plane, frame, to);
        WorkingFrame part = frame.with(() -> near.of(plane)).at(frame.disk().on(near));
        return turner(part).turn(to.view(), to.width(), to.height(), rotation, progress);
    }

    /** The part of a frame that a close-up and its disk come from, and some more for the spline between its pixels. */
    private static Region near(Plane plane, WorkingFrame frame, CloseUp to) {
        Disk disk = frame.disk().disk();
        double reach = disk.equatorialRadiusPx() + SPLINE_REACH_PX;
        Region near = Region.around(disk.x(), disk.y(), reach, plane.width(), plane.height());
        View from = new View(frame.exposure().globe(), disk);
        for (int corner = 0; corner < 4; corner++) {
            int x = corner % 2 == 0 ? 0 : to.width() - 1;
            int y = corner < 2 ? 0 : to.height() - 1;
            double pole = to.view().pole(x, y);
            double side = to.view().side(x, y);
            double column = from.column(pole, side);
            double row = from.row(pole, side);
            near = near.with(Region.around(column, row, SPLINE_REACH_PX, plane.width(), plane.height()));
        }
        return near;
    }
}
