package org.epochrome.evidence.plan;

import static org.epochrome.evidence.Markup.attribute;
import static org.epochrome.evidence.Markup.element;
import static org.epochrome.plan.Quantity.arcsec;
import static org.epochrome.plan.Quantity.arcsecPerMin;
import static org.epochrome.plan.Quantity.deg;
import static org.epochrome.plan.Quantity.number;
import static org.epochrome.plan.Quantity.px;
import static org.epochrome.plan.Quantity.time;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.GalileanMoons;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.evidence.EvidenceReport;
import org.epochrome.evidence.Html;
import org.epochrome.evidence.Markup;
import org.epochrome.plan.BandPlan;
import org.epochrome.plan.Clock;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.Quantity;
import org.epochrome.plan.drawing.DiskSketch;
import org.epochrome.plan.night.Interval;
import org.epochrome.plan.night.QuarterHour;
import org.epochrome.session.product.Provenance;
import org.epochrome.text.Message;

/** A plan as one HTML page without scripts or anything from elsewhere, for light and dark screens and for paper. */
final class PlanPage {
    /** What is shown around a globe, equatorial radii from its centre. */
    private static final double REACH = 1.35;

    private static final double MARGIN = 0.25;

    private final NightPlan plan;
    private final Clock clock;
    private final PlanSections sections;

    private PlanPage(NightPlan plan) {
        this.plan = plan;
        this.clock = new Clock(plan.settings().clock());
        this.sections = new PlanSections(plan);
    }

    static String of(NightPlan plan, String version) {
        return new PlanPage(plan).page(version);
    }

    private String page(String version) {
        String planet = plan.settings().body().displayName();
        Markup head = element(
                "head",
                element("meta", attribute("charset", "utf-8")),
                element("meta", attribute("name", "viewport"), attribute("content", "width=device-width")),
                element("meta", attribute("name", "color-scheme"), attribute("content", "light dark")),
                element("title", planet + ", " + plan.settings().date()),
                Markup.style(EvidenceReport.style() + style()));
        Markup header = element(
                "header",
                element("p", attribute("class", "kind"), "Plan for a night"),
                element("h1", planet),
                element(
                        "p",
                        attribute("class", "when"),
                        "on the night of " + plan.settings().date() + ", times in " + clock.name()),
                facts());
        Markup footer = element(
                "footer",
                Provenance.TOOL + " " + version
                        + ". Altitudes without refraction. Resolution: full width at half maximum of diffraction and"
                        + " seeing. Shift: towards the zenith against green. * longer than the resolution.");
        return Markup.page(
                head,
                Markup.of(
                        header,
                        "\n",
                        notes("Warnings", plan.warnings()),
                        plan.hours().isEmpty()
                                ? ""
                                : Html.section(
                                        "Altitude and dispersion",
                                        Html.figure(
                                                NightDrawing.of(plan),
                                                "Lighter: the planet can be recorded. Bars at the top: recordings.")),
                        notes("Advice", plan.advice()),
                        sections.recordings(),
                        sections.bands(),
                        disks(),
                        sections.motion(),
                        sections.loss(),
                        sections.sampling(),
                        sections.hours(),
                        sections.events(),
                        footer));
    }

    private static String style() {
        try (InputStream in = PlanPage.class.getResourceAsStream("plan.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Markup facts() {
        List<List<String>> facts = new ArrayList<>();
        QuarterHour sky =
                plan.best().orElseGet(() -> plan.night().at(plan.night().midnight()));
        facts.add(List.of("Diameter", arcsec(sky.equatorialDiameterArcsec(), 1)));
        facts.add(List.of(
                "on the camera",
                px(sky.equatorialDiameterArcsec() / plan.settings().telescope().arcsecPerPx())));
        plan.best().ifPresent(b -> {
            facts.add(List.of("Highest", clock.minutes(b.utc())));
            facts.add(List.of("Altitude", deg(b.altitudeDeg(), 0)));
        });
        plan.motion()
                .ifPresent(m ->
                        facts.add(List.of("Rotation", arcsecPerMin(m.centre().arcsecPerMin()))));
        for (BandPlan b : plan.bands()) {
            facts.add(List.of("Longest in " + b.band().name(), time(b.limit().longestS())));
        }
        facts.add(List.of("Aperture", number(plan.settings().telescope().apertureMm(), 0) + " mm"));
        plan.settings().seeing().ifPresent(s -> facts.add(List.of("Seeing", arcsec(s.zenithArcsec(), 1))));
        return element(
                "dl",
                attribute("class", "facts"),
                Markup.all(facts.stream()
                        .map(f -> element("div", element("dt", f.get(0)), element("dd", f.get(1))))
                        .toList()));
    }

    private static Markup notes(String title, List<Message> sentences) {
        if (sentences.isEmpty()) {
            return Markup.of();
        }
        return element(
                "section",
                attribute("class", "notes"),
                element("h2", title),
                element(
                        "ul",
                        Markup.all(sentences.stream()
                                .map(s -> element("li", s.toString()))
                                .toList())));
    }

    private Markup disks() {
        List<Instant> times = times();
        if (times.isEmpty()) {
            return Markup.of();
        }
        double reach = plan.settings().body().rings().isPresent()
                ? plan.settings().body().reachRadii() + MARGIN
                : REACH;
        List<Markup> figures = times.stream()
                .map(t -> {
                    Aspect aspect = Ephemeris.aspect(
                            plan.settings().body(),
                            t,
                            Optional.of(plan.settings().site()));
                    return Html.figure(
                            DiskDrawing.of(DiskSketch.of(aspect), reach, "The disk at " + clock.minutes(t)),
                            caption(aspect));
                })
                .toList();
        return Html.section(
                "The disk",
                Html.row("disks", figures),
                element(
                        "p",
                        "Celestial north up, east on the left, as in an image that is not mirrored; the tick is the"
                                + " planet's north pole."
                                + (plan.settings().body() == GalileanMoons.PLANET
                                        ? " Dashed circles: moons that are hidden or eclipsed. Below: the moons along"
                                                + " the equator, by their initials."
                                        : "")));
    }

    /** Beginning, best moment and end of the time in which the planet can be recorded. */
    private List<Instant> times() {
        return plan.best()
                .map(best -> {
                    Interval interval = plan.usable().stream()
                            .filter(i -> i.contains(best.utc()))
                            .findFirst()
                            .orElseThrow();
                    boolean edge =
                            best.utc().equals(interval.start()) || best.utc().equals(interval.end());
                    Instant middle =
                            edge ? interval.start().plus(interval.duration().dividedBy(2)) : best.utc();
                    return Stream.of(interval.start(), middle, interval.end()).toList();
                })
                .orElse(List.of());
    }

    private String caption(Aspect a) {
        StringBuilder text = new StringBuilder(clock.minutes(a.utc())).append(", central meridian");
        a.body().systems().stream().sorted().forEach(s -> text.append(s == RotationSystem.SINGLE ? "" : " " + s.key())
                .append(' ')
                .append(deg(a.centralMeridianDeg(s), 0)));
        return text.append(", altitude ")
                .append(a.horizontal().map(h -> deg(h.altitudeDeg(), 0)).orElse(Quantity.NONE))
                .toString();
    }
}
