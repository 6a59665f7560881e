package org.epochrome.session.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.epochrome.align.Detail;
import org.epochrome.align.DetailWitness;
import org.epochrome.align.Similarity;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FittedDisk;
import org.epochrome.job.Progress;
import org.epochrome.session.compare.Details.Seen;
import org.epochrome.session.schedule.WorkingFrames;
import org.epochrome.text.Message;

/**
 * Small differences of scale and direction between bands, as filters have that focus differently: the disks of each band are
 * freed from the common scale and direction by what their detail says, weighed against the limb.
 */
public final class BandScale {
    private static final int ROUNDS = 2;
    /** Detail with a larger standard error of direction is ignored. */
    private static final double USELESS_TURN_DEG = 0.5;

    private final Details details;

    public BandScale(Details details) {
        this.details = details;
    }

    /** The frames with scales and directions of their bands' own. */
    public WorkingFrames freed(WorkingFrames frames, Progress progress) {
        WorkingFrames result = frames;
        Map<String, Integer> leads = Comparison.leads(frames.schedule());
        for (int round = 0; round < ROUNDS; round++) {
            result = round(result, leads, round == ROUNDS - 1, progress);
        }
        return result;
    }

    private WorkingFrames round(WorkingFrames frames, Map<String, Integer> leads, boolean last, Progress progress) {
        int reference = frames.schedule().reference();
        FittedDisk base = frames.reference().disk();
        Seen against = details.sight(frames.reference(), true, progress);
        Map<String, Optional<Similarity>> bands = new HashMap<>();
        leads.forEach((band, i) -> bands.put(
                band,
                i == reference
                        ? Optional.empty()
                        : similarity(details.alike(List.of(against, details.sight(frames.get(i), true, progress))))));
        WorkingFrames freed = frames.map(frame -> bands.get(frame.band())
                .map(s -> frame.at(frame.disk()
                        .at(changed(
                                frame.disk(),
                                s,
                                frame.disk().disk().mirrored() == base.disk().mirrored()))))
                .orElse(frame));
        List<Message> warnings = new ArrayList<>();
        for (int i = 0; last && i < frames.size(); i++) {
            String band = frames.get(i).band();
            if (leads.get(band) == i && i != reference) {
                warnings.add(sentence(
                        band,
                        bands.get(band).isPresent(),
                        freed.get(i).disk().disk(),
                        freed.reference().disk().disk()));
            }
        }
        return freed.warned(warnings);
    }

    private static Message sentence(String band, boolean measured, Disk own, Disk base) {
        if (!measured) {
            return Message.of("scale.notMeasured", band);
        }
        return Message.of(
                "scale.measured",
                band,
                100 * (own.equatorialRadiusPx() / base.equatorialRadiusPx() - 1),
                Disk.wrapDeg(own.northAngleDeg() - base.northAngleDeg()));
    }

    private static Optional<Similarity> similarity(List<List<Detail>> alike) {
        return DetailWitness.similarity(alike.get(0), alike.get(1));
    }

    /** A disk as the detail sees its scale and direction; its own limb knows the scale too. */
    private static Disk changed(FittedDisk fit, Similarity s, boolean sameSense) {
        double limb = fit.radiusSigmaPx() / fit.disk().equatorialRadiusPx();
        double part = limb * limb / (limb * limb + s.scaleSigma() * s.scaleSigma());
        Disk disk = fit.disk().withRadius(fit.disk().equatorialRadiusPx() * (1 + part * s.scale()));
        return Math.toDegrees(s.turnSigmaRad()) > USELESS_TURN_DEG
                ? disk
                : disk.withNorth(disk.northAngleDeg() + (sameSense ? 1 : -1) * Math.toDegrees(s.turnRad()));
    }
}
