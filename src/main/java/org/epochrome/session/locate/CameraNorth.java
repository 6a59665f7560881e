package org.epochrome.session.locate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.schedule.ManualDisks;
import org.epochrome.session.schedule.Schedule;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/** The north angle that the frames of one camera have in common. */
final class CameraNorth {
    /** Rings that lie further off the common orientation than so many standard errors, and degrees, keep their own. */
    private static final double OWN_NORTH = 8;

    private static final double OWN_NORTH_DEG = 0.05;
    /**
     * Part of the surest frame's variance of north that all frames share: what leads one fit astray, such as zones that are not even,
     * leads the others too.
     */
    private static final double NORTH_SHARED = 0.5;
    /** Square degrees below which a variance of north is none. */
    private static final double LEAST_NORTH_VARIANCE = 1e-12;

    private final Recipe recipe;
    private final Schedule schedule;
    private final ManualDisks held;

    CameraNorth(Recipe recipe, Schedule schedule, ManualDisks held) {
        this.recipe = recipe;
        this.schedule = schedule;
        this.held = held;
    }

    /**
     * The frames of each camera, all turned alike.
     *
     * @param angles how they lie
     */
    WorkingFrames common(WorkingFrames frames, List<ImageOrientation.Angle> angles) {
        List<FittedDisk> fits = frames.disks();
        List<Message> warnings = new ArrayList<>();
        Map<Camera, List<Integer>> cameras = new LinkedHashMap<>();
        for (int i = 0; i < fits.size(); i++) {
            if (held.northDeg(i).isPresent()) {
                continue;
            }
            Camera camera = Camera.of(schedule.exposures().get(i), angles.get(i).mirrored());
            cameras.computeIfAbsent(camera, k -> new ArrayList<>()).add(i);
        }
        List<FittedDisk> result = new ArrayList<>(fits);
        for (List<Integer> members : cameras.values()) {
            List<FittedDisk> common = commonNorth(
                    members,
                    members.stream().map(fits::get).toList(),
                    members.stream().map(angles::get).toList(),
                    warnings);
            for (int k = 0; k < members.size(); k++) {
                result.set(members.get(k), common.get(k));
            }
        }
        return frames.at(result).warned(warnings);
    }

    /**
     * All frames share one mount: by how much the fits rotate the orientation, in the weighted mean, counts for all, unless a fit
     * that is sure of it says otherwise: then the field turned.
     */
    private List<FittedDisk> commonNorth(
            List<Integer> members, List<FittedDisk> fits, List<ImageOrientation.Angle> angles, List<Message> warnings) {
        double[] off = new double[fits.size()];
        for (int i = 0; i < fits.size(); i++) {
            off[i] = Disk.wrapDeg(
                    fits.get(i).disk().northAngleDeg() - angles.get(i).northDeg());
        }
        new MountCheck(recipe, schedule).warning(members, fits, off).ifPresent(warnings::add);
        double shared = NORTH_SHARED
                * fits.stream()
                        .mapToDouble(f -> square(f.northSigmaDeg()))
                        .min()
                        .orElseThrow();
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < fits.size(); i++) {
            double weight =
                    1 / Math.max(LEAST_NORTH_VARIANCE, square(fits.get(i).northSigmaDeg()) - shared);
            sum += weight * off[i];
            weights += weight;
        }
        double mean = sum / weights;
        double farthest = 0;
        boolean turns = false;
        for (int i = 0; i < fits.size(); i++) {
            double away = Math.abs(off[i] - mean);
            farthest = Math.max(farthest, away);
            turns |= away > OWN_NORTH_DEG && away > OWN_NORTH * fits.get(i).northSigmaDeg();
        }
        if (turns && ImageOrientation.ringsTellNorth(schedule.aspect())) {
            warnings.add(Message.of("north.fieldRotates", farthest));
            return fits;
        }
        double sigma = Math.sqrt(shared + 1 / weights);
        List<FittedDisk> result = new ArrayList<>();
        for (int i = 0; i < fits.size(); i++) {
            Disk disk = fits.get(i).disk().withNorth(angles.get(i).northDeg() + mean);
            result.add(fits.get(i).at(disk).withNorthSigma(sigma));
        }
        return result;
    }

    private static double square(double v) {
        return v * v;
    }
}
