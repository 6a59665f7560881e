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
import org.epochrome.session.schedule.Schedule;
import org.epochrome.text.Message;

/**
 * Small differences of scale and direction between bands, as filters have that focus differently: the disks of each band are
 * freed from the common scale and direction by what their detail says, weighed against the limb.
 */
public final class BandScale {
    private static final int ROUNDS = 2;
    /** Detail with a larger standard error of direction is ignored. */
    private static final double USELESS_TURN_DEG = 0.5;

    private final Schedule schedule;
    private final List<Message> warnings;

    public BandScale(Schedule schedule, List<Message> warnings) {
        this.schedule = schedule;
        this.warnings = warnings;
    }

    /** The disks with scales and directions of their bands' own. */
    public List<FittedDisk> freed(Details details, List<FittedDisk> found, Progress progress) {
        List<FittedDisk> result = found;
        Map<String, Integer> leads = Comparison.leads(schedule);
        for (int round = 0; round < ROUNDS; round++) {
            result = round(details, result, leads, round == ROUNDS - 1, progress);
        }
        return result;
    }

    private List<FittedDisk> round(
            Details details, List<FittedDisk> fits, Map<String, Integer> leads, boolean last, Progress progress) {
        int reference = schedule.reference();
        Seen against = details.sight(reference, fits.get(reference), true, progress);
        Map<String, Optional<Similarity>> bands = new HashMap<>();
        leads.forEach((band, i) -> bands.put(
                band,
                i == reference
                        ? Optional.empty()
                        : similarity(details.alike(List.of(against, details.sight(i, fits.get(i), true, progress))))));
        List<FittedDisk> result = new ArrayList<>();
        for (int i = 0; i < fits.size(); i++) {
            FittedDisk fit = fits.get(i);
            String band = schedule.exposures().get(i).band().name();
            Optional<Similarity> found = bands.get(band);
            boolean same = fit.disk().mirrored() == fits.get(reference).disk().mirrored();
            result.add(found.map(s -> fit.at(changed(fit, s, same))).orElse(fit));
            boolean lead = leads.get(band) == i && i != reference;
            if (last && lead && found.isEmpty()) {
                warnings.add(Message.of("scale.notMeasured", band));
            } else if (last && lead) {
                Disk base = fits.get(reference).disk();
                Disk own = result.get(i).disk();
                warnings.add(Message.of(
                        "scale.measured",
                        band,
                        100 * (own.equatorialRadiusPx() / base.equatorialRadiusPx() - 1),
                        Disk.wrapDeg(own.northAngleDeg() - base.northAngleDeg())));
            }
        }
        return result;
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
