package org.epochrome.plan;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.epochrome.plan.limit.BandDispersion;
import org.epochrome.plan.limit.Correction;
import org.epochrome.plan.limit.RecordingSequence;
import org.epochrome.plan.limit.Sampling;
import org.epochrome.plan.night.QuarterHour;
import org.epochrome.plan.night.SunCaution;
import org.epochrome.text.Message;

/** What to do in a night, in sentences. */
final class Advice {
    /** The focal ratio for pixels of 1 micrometre: common practice, no source. */
    private static final double COMMON_F_RATIO_PER_UM = 5;

    private final NightPlan plan;
    private final Clock clock;
    private final List<Message> sentences = new ArrayList<>();

    Advice(NightPlan plan) {
        this.plan = plan;
        this.clock = new Clock(plan.settings().clock());
    }

    List<Message> sentences() {
        plan.best().ifPresent(best -> {
            sentences.add(Message.of("plan.advice.best", clock.at(best.utc()), best.altitudeDeg()));
            if (plan.night().caution() == SunCaution.NEAR) {
                sentences.add(Message.of("plan.advice.nearSun"));
            }
            plan.sequence()
                    .ifPresentOrElse(this::recordings, () -> sentences.add(Message.of("plan.advice.noSequence")));
            if (plan.settings().seeing().isEmpty()) {
                sentences.add(Message.of("plan.advice.noSeeing"));
            }
            plan.correction().ifPresent(this::dispersion);
            altitudes(best);
            sampling();
        });
        return sentences;
    }

    private void recordings(RecordingSequence sequence) {
        sentences.add(Message.of(
                "plan.advice.start",
                clock.at(sequence.start()),
                sequence.orderText(),
                sequence.sets(),
                clock.at(sequence.end())));
        sentences.addAll(sequence.reasons());
        Instant meridian = plan.night().planet().culmination();
        if (!meridian.isBefore(sequence.start()) && !meridian.isAfter(sequence.end())) {
            sentences.add(Message.of("plan.advice.flip", clock.at(meridian)));
        }
    }

    private void dispersion(Correction correction) {
        boolean exceeds = plan.bands().stream()
                .flatMap(b -> b.dispersion().stream())
                .anyMatch(BandDispersion::smearExceedsResolution);
        sentences.add(Message.of(
                exceeds ? "plan.advice.corrector" : "plan.advice.noCorrector",
                correction.arcsec(),
                correction.zenithAngleRoundedDeg()));
    }

    private void altitudes(QuarterHour best) {
        String lowest = plan.bands().stream()
                .map(b -> String.format(Locale.ROOT, "%s %.0f\u00b0", b.band().name(), b.lowestAltitudeDeg()))
                .collect(Collectors.joining(", "));
        sentences.add(Message.of("plan.advice.altitudes", lowest));
        String tooLow = plan.bands().stream()
                .filter(b -> best.altitudeDeg() < b.lowestAltitudeDeg())
                .map(b -> b.band().name())
                .collect(Collectors.joining(", "));
        if (!tooLow.isEmpty()) {
            sentences.add(Message.of("plan.advice.tooLow", tooLow));
        }
    }

    private void sampling() {
        List<Sampling> all = plan.bands().stream().map(BandPlan::sampling).toList();
        double scale = plan.settings().telescope().arcsecPerPx();
        double coarsest =
                all.stream().mapToDouble(Sampling::coarsestFRatio).max().orElseThrow();
        double finest = all.stream().mapToDouble(Sampling::finestFRatio).max().orElseThrow();
        double common = COMMON_F_RATIO_PER_UM * plan.settings().telescope().pixelUm();
        double ratio = plan.settings().telescope().fRatio();
        if (all.stream().anyMatch(Sampling::tooCoarse)) {
            sentences.add(Message.of("plan.advice.tooCoarse", scale, ratio, coarsest, finest));
        } else if (all.stream().allMatch(Sampling::finerThanNeeded)) {
            sentences.add(Message.of("plan.advice.tooFine", scale, ratio, coarsest, finest));
        } else {
            sentences.add(Message.of("plan.advice.sampled", scale, ratio, coarsest, finest));
        }
        sentences.add(Message.of("plan.advice.commonRatio", common));
    }
}
