package org.epochrome.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.atmosphere.AirMass;
import org.epochrome.image.Band;
import org.epochrome.plan.limit.AirAbove;
import org.epochrome.plan.limit.BandLimit;
import org.epochrome.plan.limit.Correction;
import org.epochrome.plan.limit.RecordingSequence;
import org.epochrome.plan.limit.Sampling;
import org.epochrome.plan.limit.SequencePlanner;
import org.epochrome.plan.limit.SurfaceMotion;
import org.epochrome.plan.night.Interval;
import org.epochrome.plan.night.Night;
import org.epochrome.plan.night.QuarterHour;
import org.epochrome.plan.night.SkyEvent;
import org.epochrome.plan.night.SunCaution;
import org.epochrome.text.Message;

/**
 * What a night allows with a telescope.
 *
 * @param settings what it is made for
 * @param night the sky
 * @param events of the night, by time
 * @param hours each full quarter of an hour
 * @param best the sky when the planet stands highest in the time that can be used; empty if there is none
 * @param motion of the surface then
 * @param bands then; empty if nothing is recommended
 * @param correction what a dispersion corrector has to do; empty if nothing is recommended or the planet stands too low
 * @param sequence recordings that make one picture; empty if nothing is recommended or nothing fits
 * @param advice sentences
 * @param warnings sentences
 */
public record NightPlan(
        PlanSettings settings,
        Night night,
        List<SkyEvent> events,
        List<PlannedHour> hours,
        Optional<QuarterHour> best,
        Optional<Motion> motion,
        List<BandPlan> bands,
        Optional<Correction> correction,
        Optional<RecordingSequence> sequence,
        List<Message> advice,
        List<Message> warnings) {
    public NightPlan {
        events = List.copyOf(events);
        hours = List.copyOf(hours);
        bands = List.copyOf(bands);
        advice = List.copyOf(advice);
        warnings = List.copyOf(warnings);
    }

    /** Plans a night. */
    public static NightPlan of(PlanSettings settings) {
        Night night = settings.night();
        AirAbove air = settings.airAbove();
        Optional<UsableTime> usable = UsableTime.of(night, usable(night));
        List<PlannedHour> hours =
                night.hours().stream().map(h -> hour(h, night, air, settings)).toList();
        Optional<QuarterHour> best = usable.map(UsableTime::best);
        List<BandPlan> bands = best.map(b -> settings.bands().stream()
                        .map(band -> band(band, b, air, settings))
                        .toList())
                .orElse(List.of());
        Optional<SurfaceMotion> surface = best.map(b -> SurfaceMotion.of(settings.body(), b.utc(), ""));
        Optional<RecordingSequence> sequence = usable.flatMap(u -> new SequencePlanner(
                        bands.stream().map(BandPlan::limit).toList(),
                        surface.orElseThrow().degPerHour(surface.orElseThrow().centreLatitudeDeg()),
                        u.recording(),
                        u.best().utc())
                .plan());
        NightPlan plan = new NightPlan(
                settings,
                night,
                night.events(settings.features()).stream()
                        .filter(e -> settings.kinds().contains(e.kind()))
                        .toList(),
                hours,
                best,
                surface.map(s -> Motion.of(s, settings.telescope())),
                bands,
                best.filter(b -> b.altitudeDeg() >= AirAbove.LOWEST_DEG).map(b -> correction(b, hours, air, settings)),
                sequence,
                List.of(),
                night.warnings());
        return plan.with(new Advice(plan).sentences());
    }

    /** When the planet can be recorded; empty near the Sun, where nothing is recommended. */
    public List<Interval> usable() {
        return usable(night);
    }

    private static List<Interval> usable(Night night) {
        return night.caution() == SunCaution.TOO_NEAR ? List.of() : night.usable();
    }

    private NightPlan with(List<Message> sentences) {
        return new NightPlan(
                settings, night, events, hours, best, motion, bands, correction, sequence, sentences, warnings);
    }

    private static PlannedHour hour(QuarterHour sky, Night night, AirAbove air, PlanSettings settings) {
        boolean usable = usable(night).stream().anyMatch(i -> i.contains(sky.utc()));
        boolean modelled = sky.altitudeDeg() >= AirAbove.LOWEST_DEG;
        return new PlannedHour(
                sky,
                usable,
                modelled ? air.at(sky.altitudeDeg(), settings.bands()) : List.of(),
                modelled
                        ? OptionalDouble.of(air.spreadArcsec(sky.altitudeDeg(), settings.bands()))
                        : OptionalDouble.empty());
    }

    private static Correction correction(
            QuarterHour best, List<PlannedHour> hours, AirAbove air, PlanSettings settings) {
        double needed = air.spreadArcsec(best.altitudeDeg(), settings.bands());
        double largest = hours.stream()
                .filter(PlannedHour::usable)
                .flatMapToDouble(h -> h.spreadArcsec().stream())
                .reduce(needed, Math::max);
        double zenith = best.parallacticAngleDeg();
        return new Correction(needed, zenith < 0 ? zenith + 360 : zenith, largest);
    }

    private static BandPlan band(Band band, QuarterHour best, AirAbove air, PlanSettings settings) {
        double airMass = AirMass.at(Math.max(0, best.altitudeDeg()));
        double nm = band.passband().effectiveNm();
        SurfaceMotion motion = SurfaceMotion.of(settings.body(), best.utc(), band.name());
        return new BandPlan(
                new BandLimit(
                        band,
                        air.resolution().diffractionArcsec(nm),
                        air.resolution().arcsec(nm, airMass),
                        motion.fastestArcsecPerMin(),
                        settings.smearPart()),
                best.altitudeDeg() >= AirAbove.LOWEST_DEG
                        ? air.at(best.altitudeDeg(), List.of(band)).stream().findFirst()
                        : Optional.empty(),
                air.lowestAltitudeDeg(band),
                Sampling.of(band, air.resolution(), airMass));
    }
}
