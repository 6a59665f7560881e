package org.epochrome.evidence.plan;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Site;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.PlanSettings;
import org.epochrome.plan.limit.Correction;
import org.epochrome.plan.limit.LossAt;
import org.epochrome.plan.limit.RecordingSequence;
import org.epochrome.plan.limit.Telescope;
import org.epochrome.plan.night.Interval;
import org.epochrome.plan.night.Night;
import org.epochrome.plan.night.QuarterHour;
import org.epochrome.plan.night.SkyEvent;
import org.epochrome.session.product.Provenance;
import org.epochrome.session.report.JsonText;
import org.epochrome.text.Message;

/** A plan as JSON: the components of the records are the keys; instants in UTC, null where there is nothing. */
final class PlanJson {
    private PlanJson() {}

    static String of(NightPlan plan, String version) {
        double scale = plan.settings().telescope().arcsecPerPx();
        return JsonText.of(new Root(
                Provenance.TOOL,
                version,
                plan.settings().body(),
                plan.settings().site(),
                plan.settings().date().toString(),
                instrument(plan.settings()),
                sky(plan),
                plan.motion().map(PlanBandsJson.Speed::of),
                plan.hours().stream().map(h -> PlanHourJson.of(h, scale)).toList(),
                plan.bands().stream().map(b -> PlanBandsJson.of(b, scale)).toList(),
                plan.correction(),
                plan.sequence().map(Sequence::of),
                plan.events().stream()
                        .map(e ->
                                new Event(e.utc(), e.what(), e.kind().name().toLowerCase(Locale.ROOT), e.observable()))
                        .toList(),
                plan.advice(),
                plan.warnings()));
    }

    private record Root(
            String tool,
            String version,
            Body body,
            Site site,
            String date,
            Instrument telescope,
            Sky night,
            Optional<PlanBandsJson.Speed> motion,
            List<PlanHourJson> hours,
            List<PlanBandsJson> bands,
            Optional<Correction> corrector,
            Optional<Sequence> sequence,
            List<Event> events,
            List<Message> advice,
            List<Message> warnings) {}

    /** The telescope; seeing null if it is not known. */
    private record Instrument(
            double apertureMm,
            double obstruction,
            double focalLengthMm,
            double fRatio,
            double pixelUm,
            double arcsecPerPx,
            Optional<Double> seeingArcsec) {}

    private static Instrument instrument(PlanSettings settings) {
        Telescope t = settings.telescope();
        return new Instrument(
                t.apertureMm(),
                t.obstruction(),
                t.focalLengthMm(),
                t.fRatio(),
                t.pixelUm(),
                t.arcsecPerPx(),
                settings.seeing().map(s -> s.zenithArcsec()));
    }

    /** When planet, Sun and Moon rise and set, and when the planet can be recorded. */
    private record Sky(
            Optional<Instant> rise,
            Instant culmination,
            double culminationAltitudeDeg,
            Optional<Instant> set,
            Optional<Instant> sunset,
            Optional<Instant> sunrise,
            Optional<Instant> civilDusk,
            Optional<Instant> civilDawn,
            Optional<Instant> nauticalDusk,
            Optional<Instant> nauticalDawn,
            Optional<Instant> astronomicalDusk,
            Optional<Instant> astronomicalDawn,
            Optional<Instant> moonrise,
            Optional<Instant> moonset,
            List<Times> usable,
            Optional<Instant> best) {}

    private record Times(Instant start, Instant end) {
        static Times of(Interval interval) {
            return new Times(interval.start(), interval.end());
        }
    }

    private static Sky sky(NightPlan plan) {
        Night night = plan.night();
        return new Sky(
                night.planet().rise(),
                night.planet().culmination(),
                night.planet().culminationAltitudeDeg(),
                night.planet().set(),
                night.sun().sunset(),
                night.sun().sunrise(),
                night.sun().civilDusk(),
                night.sun().civilDawn(),
                night.sun().nauticalDusk(),
                night.sun().nauticalDawn(),
                night.sun().astronomicalDusk(),
                night.sun().astronomicalDawn(),
                night.moon().rise(),
                night.moon().set(),
                plan.usable().stream().map(Times::of).toList(),
                plan.best().map(QuarterHour::utc));
    }

    /** The recordings; lengths in seconds, losses as factors that are null where nothing was seen. */
    private record Sequence(
            String order,
            int sets,
            Instant start,
            Instant end,
            Instant epoch,
            double largestTurnDeg,
            double unseenBySomeBandRadii,
            List<Recording> recordings,
            List<Loss> loss) {
        static Sequence of(RecordingSequence s) {
            return new Sequence(
                    s.orderText(),
                    s.sets(),
                    s.start(),
                    s.end(),
                    s.epoch(),
                    s.largestTurnDeg(),
                    s.unseenBySomeBand(),
                    s.recordings().stream()
                            .map(r -> new Recording(
                                    r.set(),
                                    r.band().name(),
                                    r.start(),
                                    r.end(),
                                    r.length().toMillis() / 1000.0))
                            .toList(),
                    s.losses().stream().map(Loss::of).toList());
        }
    }

    private record Recording(int set, String band, Instant start, Instant end, double lengthS) {}

    private record Loss(double distanceRadii, double blurGrowthWorstFrame, double blurGrowthWorstBand) {
        static Loss of(LossAt l) {
            return new Loss(l.distance(), l.worstFrame(), l.worstBand());
        }
    }

    /** A {@link SkyEvent}. */
    private record Event(Instant utc, Message what, String kind, boolean observable) {}
}
