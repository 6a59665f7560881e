package org.epochrome.evidence.plan;

import static org.epochrome.evidence.Markup.attribute;
import static org.epochrome.evidence.Markup.element;
import static org.epochrome.plan.Quantity.arcsec;
import static org.epochrome.plan.Quantity.arcsecPerMin;
import static org.epochrome.plan.Quantity.deg;
import static org.epochrome.plan.Quantity.number;
import static org.epochrome.plan.Quantity.percent;
import static org.epochrome.plan.Quantity.px;
import static org.epochrome.plan.Quantity.pxPerMin;
import static org.epochrome.plan.Quantity.time;
import static org.epochrome.plan.Quantity.times;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.evidence.Html;
import org.epochrome.evidence.Markup;
import org.epochrome.plan.BandPlan;
import org.epochrome.plan.Clock;
import org.epochrome.plan.Motion;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.PlannedHour;
import org.epochrome.plan.Quantity;
import org.epochrome.plan.limit.BandDispersion;
import org.epochrome.plan.limit.Sampling;
import org.epochrome.plan.night.QuarterHour;
import org.epochrome.plan.night.SkyEvent;

/** The tables of the page. */
final class PlanSections {
    private final NightPlan plan;
    private final Clock clock;
    private final double scale;

    PlanSections(NightPlan plan) {
        this.plan = plan;
        this.clock = new Clock(plan.settings().clock());
        this.scale = plan.settings().telescope().arcsecPerPx();
    }

    Markup recordings() {
        return plan.sequence()
                .map(s -> Html.section(
                        "Recordings",
                        Html.table(
                                List.of("set", "band", "start", "middle", "end", "length", "altitude"),
                                s.recordings().stream()
                                        .map(r -> List.<Object>of(
                                                "set " + r.set(),
                                                band(r.band().name()),
                                                clock.seconds(r.start()),
                                                clock.seconds(r.mid()),
                                                clock.seconds(r.end()),
                                                time(r.length()),
                                                deg(plan.night().at(r.mid()).altitudeDeg(), 1)))
                                        .toList())))
                .orElse(Markup.of());
    }

    Markup bands() {
        if (plan.bands().isEmpty()) {
            return Markup.of();
        }
        List<List<Object>> rows = new ArrayList<>();
        for (BandPlan b : plan.bands()) {
            rows.add(List.of(
                    band(b.band().name()),
                    number(b.band().passband().fromNm(), 0) + "\u2013"
                            + number(b.band().passband().toNm(), 0) + " nm",
                    arcsec(b.limit().diffractionArcsec(), 2),
                    arcsec(b.limit().resolutionArcsec(), 2),
                    time(b.limit().longestS()),
                    arcsec(b.limit().rotationSmearArcsec(), 2) + " = "
                            + px(b.limit().rotationSmearArcsec() / scale),
                    percent(b.limit().contrastLoss()),
                    b.dispersion()
                            .<Object>map(d -> marked(d.shiftArcsec(), d.shiftExceedsResolution()))
                            .orElse(Quantity.NONE),
                    b.dispersion()
                            .<Object>map(d -> marked(d.smearArcsec(), d.smearExceedsResolution()))
                            .orElse(Quantity.NONE),
                    deg(b.lowestAltitudeDeg(), 0)));
        }
        return Html.section(
                "Bands when the planet is highest",
                Html.table(
                        List.of(
                                "",
                                "passband",
                                "diffraction",
                                "resolution",
                                "longest",
                                "rotation smear",
                                "contrast lost",
                                "shift",
                                "dispersion within",
                                "not below"),
                        rows));
    }

    private Object marked(double arcsec, boolean exceeds) {
        String text = arcsec(arcsec, 2) + " = " + px(arcsec / scale);
        return exceeds ? element("b", attribute("class", "exceeds"), text + "*") : text;
    }

    Markup motion() {
        return plan.motion()
                .map(m -> {
                    List<List<Object>> rows = new ArrayList<>();
                    rows.add(rate("centre, " + deg(m.centre().latitudeDeg(), 1), m.centre()));
                    m.latitudes().forEach(r -> rows.add(rate(deg(r.latitudeDeg(), 0), r)));
                    return Html.section(
                            "Rotation on the central meridian",
                            Html.table(List.of("latitude", "speed", "on the camera", "turn"), rows));
                })
                .orElse(Markup.of());
    }

    private static List<Object> rate(String where, Motion.Rate r) {
        return List.of(where, arcsecPerMin(r.arcsecPerMin()), pxPerMin(r.pxPerMin()), deg(r.degPerHour(), 2) + "/h");
    }

    Markup loss() {
        return plan.sequence()
                .map(s -> Html.section(
                        "What turning leaves",
                        Html.table(
                                List.of("distance from the centre", "blur of the worst frame", "of the worst band"),
                                s.losses().stream()
                                        .map(l -> List.<Object>of(
                                                number(l.distance(), 2) + " radii",
                                                times(l.worstFrame()),
                                                times(l.worstBand())))
                                        .toList()),
                        element(
                                "p",
                                "Factor by which the blur along the rotation grows against a frame at the epoch; a dash:"
                                        + " out of sight. Largest turn "
                                        + deg(s.largestTurnDeg(), 1)
                                        + "; width at the limb that some band does not see "
                                        + arcsec(
                                                s.unseenBySomeBand()
                                                        * plan.best()
                                                                .orElseThrow()
                                                                .equatorialDiameterArcsec()
                                                        / 2,
                                                2)
                                        + ".")))
                .orElse(Markup.of());
    }

    Markup sampling() {
        if (plan.bands().isEmpty()) {
            return Markup.of();
        }
        List<List<Object>> rows = new ArrayList<>();
        for (BandPlan b : plan.bands()) {
            Sampling s = b.sampling();
            rows.add(List.of(
                    band(b.band().name()),
                    arcsec(s.arcsecPerPx(), 3) + "/px",
                    arcsec(s.coarsestArcsecPerPx(), 3) + "/px",
                    arcsec(s.finestArcsecPerPx(), 3) + "/px",
                    "f/" + number(plan.settings().telescope().fRatio(), 1),
                    "f/" + number(s.coarsestFRatio(), 1),
                    "f/" + number(s.finestFRatio(), 1)));
        }
        return Html.section(
                "Sampling",
                Html.table(
                        List.of(
                                "",
                                "pixels",
                                "for this seeing",
                                "for diffraction",
                                "focal ratio",
                                "for this seeing",
                                "for diffraction"),
                        rows));
    }

    Markup hours() {
        List<PlannedHour> usable =
                plan.hours().stream().filter(PlannedHour::usable).toList();
        if (usable.isEmpty()) {
            return Markup.of();
        }
        List<RotationSystem> systems =
                plan.settings().body().systems().stream().sorted().toList();
        List<String> heads = new ArrayList<>(List.of("time", "altitude", "azimuth", "air mass"));
        systems.forEach(s -> heads.add("CM" + (s == RotationSystem.SINGLE ? "" : " " + s.key())));
        heads.addAll(List.of("Moon", "Moon apart"));
        plan.settings().bands().forEach(b -> heads.add(b.name() + " shift, within"));
        heads.add("to correct");
        List<List<Object>> rows = new ArrayList<>();
        for (PlannedHour h : usable) {
            rows.add(hour(h, systems));
        }
        return Html.section("Every quarter of an hour", Html.table(heads, rows));
    }

    private List<Object> hour(PlannedHour h, List<RotationSystem> systems) {
        QuarterHour sky = h.sky();
        List<Object> row = new ArrayList<>(List.of(
                clock.minutes(sky.utc()),
                deg(sky.altitudeDeg(), 1),
                deg(sky.azimuthDeg(), 0),
                sky.airMass().isPresent() ? number(sky.airMass().getAsDouble(), 2) : Quantity.NONE));
        systems.forEach(s -> row.add(deg(sky.centralMeridianDeg().get(s), 1)));
        row.add(deg(sky.moonAltitudeDeg(), 0));
        row.add(deg(sky.moonDistanceDeg(), 0));
        for (int i = 0; i < plan.settings().bands().size(); i++) {
            if (h.bands().isEmpty()) {
                row.add(Quantity.NONE);
                continue;
            }
            BandDispersion d = h.bands().get(i);
            row.add(Markup.of(
                    arcsec(d.shiftArcsec(), 2) + "\u2002",
                    element(
                            d.smearExceedsResolution() ? "b" : "span",
                            attribute("class", d.smearExceedsResolution() ? "exceeds" : "within"),
                            arcsec(d.smearArcsec(), 2) + (d.smearExceedsResolution() ? "*" : ""))));
        }
        row.add(h.spreadArcsec().isPresent() ? arcsec(h.spreadArcsec().getAsDouble(), 2) : Quantity.NONE);
        return row;
    }

    Markup events() {
        List<SkyEvent> events = plan.events();
        if (events.isEmpty()) {
            return Markup.of();
        }
        Markup table = Html.table(
                List.of("time", "", ""),
                events.stream()
                        .map(e -> List.<Object>of(
                                clock.minutes(e.utc()), e.what().toString(), e.observable() ? "" : "not observable"))
                        .toList());
        return Html.section("Events", element("div", attribute("class", "events"), table));
    }

    private static Markup band(String name) {
        return element("b", attribute("class", "band " + Svg.ink(name)), name);
    }
}
