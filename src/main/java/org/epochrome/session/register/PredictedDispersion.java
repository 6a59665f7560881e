package org.epochrome.session.register;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.epochrome.align.Link;
import org.epochrome.align.Shift;
import org.epochrome.align.Witness;
import org.epochrome.disk.Disk;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.recipe.Exposure;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.schedule.AtmosphericDispersion;
import org.epochrome.session.schedule.WorkingFrame;
import org.epochrome.session.schedule.WorkingFrames;

/**
 * What dispersion says about the planes of a one-shot-colour frame: they were taken at one time, so nothing else sets them
 * apart. Between frames the mount drifts.
 *
 * @param link from the green plane of the frame to another one, on the output's pixels
 * @param rightPerNm by how much that plane lies further right if its waves are longer by a nanometre, output's pixels
 * @param downPerNm the same down
 */
record PredictedDispersion(Link link, double rightPerNm, double downPerNm) {
    /** The prediction is never trusted better than this; the air is known to some per cent. */
    private static final double FLOOR_PX = 0.02;

    private static final double AIR_PART = 0.05;
    /** Standard error of the middle of a passband: makers and cameras differ by so much (common practice, no source). */
    static final double MIDDLE_DOUBT_NM = 4;

    /**
     * The predictions for all planes but the green ones.
     *
     * @param output the disk of the output
     */
    static List<PredictedDispersion> of(WorkingFrames frames, AtmosphericDispersion sky, Disk output) {
        List<PredictedDispersion> predictions = new ArrayList<>();
        Map<DatedFrame, Integer> green = new HashMap<>();
        for (int i = 0; i < frames.size(); i++) {
            if (frames.get(i).band().equals("G")) {
                green.put(frames.get(i).exposure().frame(), i);
            }
        }
        for (int i = 0; i < frames.size(); i++) {
            Integer from = green.get(frames.get(i).exposure().frame());
            if (from != null && from != i) {
                Plane there = Plane.of(frames.get(i));
                Plane here = Plane.of(frames.get(from));
                int to = i;
                between(here, there, sky, output)
                        .map(p -> new PredictedDispersion(
                                new Link(from, to, p.shift, Witness.PHYSICS), p.perNm.x(), p.perNm.y()))
                        .ifPresent(predictions::add);
            }
        }
        return predictions;
    }

    private record Plane(Exposure exposure, Disk disk) {
        static Plane of(WorkingFrame frame) {
            return new Plane(frame.exposure(), frame.disk().disk());
        }

        Optional<PixelOffset> shift(AtmosphericDispersion sky) {
            return sky.shift(exposure.band(), exposure.aspect(), disk);
        }

        Optional<PixelOffset> perNm(AtmosphericDispersion sky) {
            return sky.shiftPerNm(exposure.band(), exposure.aspect(), disk);
        }
    }

    private record Predicted(Shift shift, PixelOffset perNm) {}

    private static Optional<Predicted> between(Plane here, Plane there, AtmosphericDispersion sky, Disk output) {
        Optional<PixelOffset> from = here.shift(sky);
        Optional<PixelOffset> to = there.shift(sky);
        if (from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        Disk own = there.disk;
        double dx = to.get().x() - from.get().x();
        double dy = to.get().y() - from.get().y();
        PixelOffset off = Registration.carried(
                new PixelOffset(dx - (own.x() - here.disk.x()), dy - (own.y() - here.disk.y())), own, output);
        double even =
                (FLOOR_PX + AIR_PART * Math.hypot(dx, dy)) * output.equatorialRadiusPx() / own.equatorialRadiusPx();
        PixelOffset perNm = Registration.carried(there.perNm(sky).orElseThrow(), own, output);
        PixelOffset greenPerNm = Registration.carried(here.perNm(sky).orElseThrow(), here.disk, output);
        double along = MIDDLE_DOUBT_NM * Math.hypot(perNm.lengthPx(), greenPerNm.lengthPx());
        double directionDeg = Math.toDegrees(Math.atan2(-perNm.x(), -perNm.y()));
        return Optional.of(
                new Predicted(new Shift(off.x(), off.y(), even, even).withAddedSigma(along, directionDeg), perNm));
    }

    /**
     * Where the middle of the passband lies by where all witnesses together see the plane.
     *
     * @param seen where the plane lies against green by all witnesses, beyond what the limb says
     */
    PassbandMiddle middle(Shift seen) {
        double squared = rightPerNm * rightPerNm + downPerNm * downPerNm;
        double off = ((seen.x() - link.shift().x()) * rightPerNm
                        + (seen.y() - link.shift().y()) * downPerNm)
                / squared;
        return new PassbandMiddle(off, Math.max(seen.sigmaX(), seen.sigmaY()) / Math.sqrt(squared));
    }
}
