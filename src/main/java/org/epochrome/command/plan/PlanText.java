package org.epochrome.command.plan;

import static org.epochrome.plan.Quantity.arcsec;
import static org.epochrome.plan.Quantity.arcsecPerMin;
import static org.epochrome.plan.Quantity.deg;
import static org.epochrome.plan.Quantity.number;
import static org.epochrome.plan.Quantity.percent;
import static org.epochrome.plan.Quantity.px;
import static org.epochrome.plan.Quantity.pxPerMin;
import static org.epochrome.plan.Quantity.time;
import static org.epochrome.plan.Quantity.times;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.plan.BandPlan;
import org.epochrome.plan.Clock;
import org.epochrome.plan.Motion;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.PlannedHour;
import org.epochrome.plan.Quantity;
import org.epochrome.plan.limit.BandDispersion;
import org.epochrome.plan.limit.LossAt;
import org.epochrome.plan.limit.RecordingSequence;
import org.epochrome.plan.limit.Telescope;
import org.epochrome.plan.night.QuarterHour;
import org.epochrome.plan.night.RiseAndSet;
import org.epochrome.plan.night.SunTimes;
import org.epochrome.text.Message;

/** A plan as text. */
public final class PlanText {
    private final NightPlan plan;
    private final Clock clock;
    private final PlainPage page = new PlainPage();

    private PlanText(NightPlan plan) {
        this.plan = plan;
        this.clock = new Clock(plan.settings().clock());
    }

    /** Prints a plan on standard output. */
    public static void print(NightPlan plan) {
        new PlanText(plan).print();
    }

    private void print() {
        page.println(Message.of(
                "plan.title",
                plan.settings().body().displayName(),
                plan.settings().date(),
                clock.name()));
        for (Message warning : plan.warnings()) {
            page.println(Message.of("plan.warning", warning));
        }
        sky();
        telescope();
        plan.motion().ifPresent(this::motion);
        if (!plan.bands().isEmpty()) {
            bands();
        }
        plan.sequence().ifPresent(this::sequence);
        hours();
        events();
        if (!plan.advice().isEmpty()) {
            heading(Message.text("plan.headingAdvice"));
            plan.advice().forEach(a -> page.println(Message.of("plan.adviceLine", a)));
        }
    }

    private void heading(String text) {
        page.println("");
        page.println(text);
    }

    private void sky() {
        SunTimes sun = plan.night().sun();
        page.line(Message.text("plan.sunset"), at(sun.sunset()));
        page.line(Message.text("plan.dusk"), at(sun.astronomicalDusk()));
        page.line(Message.text("plan.dawn"), at(sun.astronomicalDawn()));
        page.line(Message.text("plan.sunrise"), at(sun.sunrise()));
        RiseAndSet planet = plan.night().planet();
        page.line(Message.text("plan.rise"), at(planet.rise()));
        page.line(
                Message.text("plan.culmination"),
                Message.of(
                        "plan.culminationAt",
                        clock.minutes(planet.culmination()),
                        deg(planet.culminationAltitudeDeg(), 1)));
        page.line(Message.text("plan.set"), at(planet.set()));
        RiseAndSet moon = plan.night().moon();
        QuarterHour middle =
                plan.best().orElseGet(() -> plan.night().at(plan.night().midnight()));
        page.line(
                Message.text("plan.moon"),
                Message.of(
                        "plan.moonAt",
                        at(moon.rise()),
                        at(moon.set()),
                        percent(middle.moonIlluminatedFraction()),
                        deg(middle.moonDistanceDeg(), 0)));
        page.line(
                Message.text("plan.planet"),
                Message.of(
                        "plan.planetAt",
                        arcsec(middle.equatorialDiameterArcsec(), 2),
                        px(middle.equatorialDiameterArcsec()
                                / plan.settings().telescope().arcsecPerPx()),
                        deg(middle.phaseAngleDeg(), 1),
                        percent(middle.illuminatedFraction()),
                        deg(middle.elongationDeg(), 1)));
    }

    private void telescope() {
        Telescope t = plan.settings().telescope();
        page.line(
                Message.text("plan.telescope"),
                Message.of(
                        "plan.telescopeOf",
                        number(t.apertureMm(), 0),
                        percent(t.obstruction()),
                        number(t.focalLengthMm(), 0),
                        number(t.fRatio(), 1),
                        number(t.pixelUm(), 2),
                        arcsec(t.arcsecPerPx(), 3)));
        plan.settings()
                .seeing()
                .ifPresent(s -> page.line(
                        Message.text("plan.seeing"), Message.of("plan.seeingOf", arcsec(s.zenithArcsec(), 2))));
    }

    private void motion(Motion m) {
        heading(Message.text("plan.headingMotion"));
        TextTable table = new TextTable(List.of(
                Message.text("plan.columnLatitude"),
                Message.text("plan.columnSpeed"),
                Message.text("plan.columnSpeedPx"),
                Message.text("plan.columnTurn")));
        List<Motion.Rate> rates = new ArrayList<>(List.of(m.centre()));
        rates.addAll(m.latitudes());
        for (int i = 0; i < rates.size(); i++) {
            Motion.Rate r = rates.get(i);
            table.row(List.of(
                    i == 0 ? Message.text("plan.centre", deg(r.latitudeDeg(), 1)) : deg(r.latitudeDeg(), 0),
                    arcsecPerMin(r.arcsecPerMin()),
                    pxPerMin(r.pxPerMin()),
                    deg(r.degPerHour(), 2) + "/h"));
        }
        table.print(page);
    }

    private void bands() {
        heading(Message.text("plan.headingBands"));
        TextTable table = new TextTable(List.of(
                Message.text("plan.columnBand"),
                Message.text("plan.columnPassband"),
                Message.text("plan.columnDiffraction"),
                Message.text("plan.columnResolution"),
                Message.text("plan.columnLongest"),
                Message.text("plan.columnFullSmear"),
                Message.text("plan.columnSmear"),
                Message.text("plan.columnContrast"),
                Message.text("plan.columnShift"),
                Message.text("plan.columnDispersion"),
                Message.text("plan.columnLowest")));
        double scale = plan.settings().telescope().arcsecPerPx();
        for (BandPlan b : plan.bands()) {
            table.row(List.of(
                    b.band().name(),
                    Message.text(
                            "plan.passband",
                            b.band().passband().fromNm(),
                            b.band().passband().toNm()),
                    arcsec(b.limit().diffractionArcsec(), 2),
                    arcsec(b.limit().resolutionArcsec(), 2),
                    time(b.limit().longestS()),
                    time(b.limit().fullSmearS()),
                    arcsec(b.limit().rotationSmearArcsec(), 2) + " = "
                            + px(b.limit().rotationSmearArcsec() / scale),
                    percent(b.limit().contrastLoss()),
                    b.dispersion()
                            .map(d -> shift(d) + " = " + px(d.shiftArcsec() / scale))
                            .orElse(Quantity.NONE),
                    b.dispersion()
                            .map(d -> smear(d) + " = " + px(d.smearArcsec() / scale))
                            .orElse(Quantity.NONE),
                    deg(b.lowestAltitudeDeg(), 0)));
        }
        table.print(page);
        page.println(Message.text("plan.mark"));
        page.println(Message.text("plan.star"));
    }

    private static String shift(BandDispersion d) {
        return arcsec(d.shiftArcsec(), 2) + (d.shiftExceedsResolution() ? "*" : "");
    }

    private static String smear(BandDispersion d) {
        return arcsec(d.smearArcsec(), 2) + (d.smearExceedsResolution() ? "*" : "");
    }

    private void sequence(RecordingSequence sequence) {
        heading(Message.text("plan.headingSequence"));
        Checklist.table(plan, sequence).print(page);
        heading(Message.text("plan.headingLoss"));
        TextTable table = new TextTable(List.of(
                Message.text("plan.columnDistance"),
                Message.text("plan.columnWorstFrame"),
                Message.text("plan.columnWorstBand")));
        for (LossAt loss : sequence.losses()) {
            table.row(List.of(
                    Message.text("plan.radii", number(loss.distance(), 2)),
                    times(loss.worstFrame()),
                    times(loss.worstBand())));
        }
        table.print(page);
        page.println(Message.of(
                "plan.unseen",
                deg(sequence.largestTurnDeg(), 1),
                arcsec(sequence.unseenBySomeBand() * plan.best().orElseThrow().equatorialDiameterArcsec() / 2, 2)));
    }

    private void hours() {
        List<PlannedHour> usable =
                plan.hours().stream().filter(PlannedHour::usable).toList();
        if (usable.isEmpty()) {
            return;
        }
        heading(Message.text("plan.headingHours", clock.name()));
        List<String> heads = new ArrayList<>(List.of(
                Message.text("plan.columnTime"),
                Message.text("plan.columnAltitude"),
                Message.text("plan.columnAzimuth"),
                Message.text("plan.columnAirMass")));
        List<RotationSystem> systems =
                plan.settings().body().systems().stream().sorted().toList();
        systems.forEach(s -> heads.add(
                s == RotationSystem.SINGLE
                        ? Message.text("plan.columnMeridian")
                        : Message.text("plan.columnMeridianOf", s.key())));
        heads.add(Message.text("plan.columnMoon"));
        plan.settings().bands().forEach(b -> heads.add(Message.text("plan.columnShiftSmear", b.name())));
        heads.add(Message.text("plan.columnSpread"));
        TextTable table = new TextTable(heads);
        for (PlannedHour h : usable) {
            QuarterHour sky = h.sky();
            List<String> cells = new ArrayList<>(List.of(
                    clock.minutes(sky.utc()),
                    deg(sky.altitudeDeg(), 1),
                    deg(sky.azimuthDeg(), 0),
                    sky.airMass().isPresent() ? number(sky.airMass().getAsDouble(), 2) : Quantity.NONE));
            systems.forEach(s -> cells.add(deg(sky.centralMeridianDeg().get(s), 1)));
            cells.add(deg(sky.moonAltitudeDeg(), 0));
            for (int i = 0; i < plan.settings().bands().size(); i++) {
                cells.add(
                        h.bands().isEmpty()
                                ? Quantity.NONE
                                : shift(h.bands().get(i)) + " "
                                        + smear(h.bands().get(i)));
            }
            cells.add(h.spreadArcsec().isPresent() ? arcsec(h.spreadArcsec().getAsDouble(), 2) : Quantity.NONE);
            table.row(cells);
        }
        table.print(page);
    }

    private void events() {
        List<String> lines = plan.events().stream()
                .map(e -> Message.text(
                        e.observable() ? "plan.event" : "plan.eventUnseen", clock.minutes(e.utc()), e.what()))
                .collect(Collectors.toList());
        if (!lines.isEmpty()) {
            heading(Message.text("plan.headingEvents", clock.name()));
            lines.forEach(page::println);
        }
    }

    private String at(Optional<Instant> utc) {
        return utc.map(clock::minutes).orElse(Quantity.NONE);
    }
}
