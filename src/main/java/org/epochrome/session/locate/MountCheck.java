package org.epochrome.session.locate;

import java.util.List;
import java.util.Optional;
import org.epochrome.disk.FittedDisk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.text.Message;

/** Whether the field turned from frame to frame as the mount that was named turns it. */
final class MountCheck {
    /** Squared departures, in standard errors and by frame, from which the axes speak against a mount. */
    private static final double DOUBTFUL = 9;
    /** The other mount must fit so many times better to be named. */
    private static final double CLEAR = 4;

    private final Recipe recipe;
    private final Schedule schedule;

    MountCheck(Recipe recipe, Schedule schedule) {
        this.recipe = recipe;
        this.schedule = schedule;
    }

    /**
     * A warning for the user, if there is one. Saturn's rings show a rotated field by themselves, without this.
     *
     * @param frames numbers of the exposures, of one camera
     * @param fits their disks
     * @param offDeg by how much the fitted north angles depart from those that the mount would have
     */
    Optional<Message> warning(List<Integer> frames, List<FittedDisk> fits, double[] offDeg) {
        if (recipe.place().site().isEmpty()
                || (ImageOrientation.ringsTellNorth(schedule.aspect())
                        && recipe.setup().mount() == Mount.EQUATORIAL)) {
            return Optional.empty();
        }
        Mount other = recipe.setup().mount() == Mount.ALTAZ ? Mount.EQUATORIAL : Mount.ALTAZ;
        double[] offOther = new double[offDeg.length];
        for (int i = 0; i < offDeg.length; i++) {
            Aspect reference = schedule.referenceExposure().aspect();
            Aspect own = schedule.exposures().get(frames.get(i)).aspect();
            boolean mirrored = fits.get(i).disk().mirrored();
            offOther[i] = offDeg[i]
                    + recipe.setup().mount().carriedNorthDeg(0, reference, own, mirrored)
                    - other.carriedNorthDeg(0, reference, own, mirrored);
        }
        double given = misfit(fits, offDeg);
        if (given < DOUBTFUL * fits.size()) {
            return Optional.empty();
        }
        boolean clear = CLEAR * Math.max(misfit(fits, offOther), fits.size()) < given;
        return Optional.of(Message.of(
                !clear ? "north.mountDiffers" : other == Mount.ALTAZ ? "north.mountAltaz" : "north.mountEquatorial"));
    }

    private static double misfit(List<FittedDisk> fits, double[] offDeg) {
        double sum = 0;
        double squares = 0;
        double weights = 0;
        for (int i = 0; i < offDeg.length; i++) {
            double weight = 1 / (fits.get(i).northSigmaDeg() * fits.get(i).northSigmaDeg());
            sum += weight * offDeg[i];
            squares += weight * offDeg[i] * offDeg[i];
            weights += weight;
        }
        return squares - sum * sum / weights;
    }
}
