package org.epochrome.desktop.plan;

import static org.epochrome.plan.Quantity.arcsec;
import static org.epochrome.plan.Quantity.deg;
import static org.epochrome.plan.Quantity.percent;
import static org.epochrome.plan.Quantity.px;
import static org.epochrome.plan.Quantity.time;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.style.Texts;
import org.epochrome.plan.BandPlan;
import org.epochrome.plan.Clock;
import org.epochrome.plan.Motion;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.Quantity;
import org.epochrome.plan.limit.BandDispersion;
import org.epochrome.plan.limit.PlannedRecording;
import org.epochrome.plan.limit.RecordingSequence;
import org.epochrome.plan.night.QuarterHour;
import org.epochrome.plan.night.SkyEvent;

/** The numbers of a plan. */
final class PlanTables {
    private final NightPlan plan;
    private final Clock clock;
    private final double scale;

    PlanTables(NightPlan plan) {
        this.plan = plan;
        this.clock = new Clock(plan.settings().clock());
        this.scale = plan.settings().telescope().arcsecPerPx();
    }

    /** The numbers that matter most. */
    FlowPane facts() {
        FlowPane facts = new FlowPane(22, 8);
        QuarterHour sky =
                plan.best().orElseGet(() -> plan.night().at(plan.night().midnight()));
        double diameter = sky.equatorialDiameterArcsec();
        facts.getChildren().add(fact("plan.fact.diameter", arcsec(diameter, 1) + " = " + px(diameter / scale)));
        plan.best().ifPresent(b -> facts.getChildren()
                .add(fact("plan.fact.highest", clock.minutes(b.utc()) + ", " + deg(b.altitudeDeg(), 0))));
        plan.motion().ifPresent(m -> facts.getChildren()
                .add(fact(
                        "plan.fact.rotation",
                        arcsec(m.centre().arcsecPerMin(), 2) + "/min = "
                                + px(m.centre().pxPerMin()) + "/min")));
        for (BandPlan b : plan.bands()) {
            Label title = new Label(Texts.of("plan.fact.longest", b.band().name()));
            facts.getChildren().add(fact(title, time(b.limit().longestS())));
        }
        return facts;
    }

    private static VBox fact(String key, String value) {
        return fact(new Label(Texts.of(key)), value);
    }

    private static VBox fact(Label title, String value) {
        title.getStyleClass().add("name");
        Label number = new Label(value);
        number.getStyleClass().add("plan-fact");
        return new VBox(1, title, number);
    }

    /** The recordings, to be taken to the telescope. */
    List<Node> recordings() {
        if (plan.sequence().isEmpty()) {
            return List.of();
        }
        RecordingSequence sequence = plan.sequence().get();
        List<List<String>> rows = new ArrayList<>();
        for (PlannedRecording r : sequence.recordings()) {
            rows.add(List.of(
                    String.valueOf(r.set()),
                    r.band().name(),
                    clock.seconds(r.start()),
                    clock.seconds(r.end()),
                    time(r.length()),
                    deg(plan.night().at(r.mid()).altitudeDeg(), 1)));
        }
        return section(
                "plan.recordings",
                List.of("plan.set", "plan.band", "plan.start", "plan.end", "plan.length", "plan.altitude"),
                rows);
    }

    /** What limits each band. */
    List<Node> bands() {
        List<List<String>> rows = new ArrayList<>();
        for (BandPlan b : plan.bands()) {
            rows.add(List.of(
                    b.band().name(),
                    arcsec(b.limit().resolutionArcsec(), 2),
                    time(b.limit().longestS()),
                    arcsec(b.limit().rotationSmearArcsec(), 2) + " = "
                            + px(b.limit().rotationSmearArcsec() / scale),
                    percent(b.limit().contrastLoss()),
                    b.dispersion()
                            .map(d -> marked(d.shiftArcsec(), d.shiftExceedsResolution()))
                            .orElse(Quantity.NONE),
                    b.dispersion().map(this::smear).orElse(Quantity.NONE),
                    deg(b.lowestAltitudeDeg(), 0)));
        }
        List<Node> nodes = section(
                "plan.limits",
                List.of(
                        "plan.band",
                        "plan.resolution",
                        "plan.longest",
                        "plan.smear",
                        "plan.contrast",
                        "plan.shift",
                        "plan.within",
                        "plan.lowest"),
                rows);
        if (!rows.isEmpty()) {
            nodes.add(Panel.prose(Texts.of("plan.limits.help")));
        }
        return nodes;
    }

    private String smear(BandDispersion d) {
        return marked(d.smearArcsec(), d.smearExceedsResolution());
    }

    private String marked(double value, boolean exceeds) {
        return arcsec(value, 2) + " = " + px(value / scale) + (exceeds ? " *" : "");
    }

    /** How fast the surface moves. */
    List<Node> motion() {
        List<List<String>> rows = new ArrayList<>();
        plan.motion().ifPresent(m -> {
            rows.add(rate(Texts.of("plan.centre", deg(m.centre().latitudeDeg(), 1)), m.centre()));
            m.latitudes().forEach(r -> rows.add(rate(deg(r.latitudeDeg(), 0), r)));
        });
        return section("plan.motion", List.of("plan.surfaceLatitude", "plan.speed", "plan.speedPx", "plan.turn"), rows);
    }

    private static List<String> rate(String where, Motion.Rate r) {
        return List.of(
                where, arcsec(r.arcsecPerMin(), 3) + "/min", px(r.pxPerMin()) + "/min", deg(r.degPerHour(), 2) + "/h");
    }

    /** What happens in the night. */
    List<Node> events() {
        List<List<String>> rows = new ArrayList<>();
        for (SkyEvent e : plan.events()) {
            rows.add(List.of(
                    clock.minutes(e.utc()), e.what().toString(), e.observable() ? "" : Texts.of("plan.notObservable")));
        }
        return section("plan.events", List.of("plan.time", "plan.event", "plan.remark"), rows);
    }

    private static List<Node> section(String title, List<String> heads, List<List<String>> rows) {
        List<Node> nodes = new ArrayList<>();
        if (rows.isEmpty()) {
            return nodes;
        }
        GridPane grid = new GridPane();
        grid.getStyleClass().add("plan-table");
        for (int c = 0; c < heads.size(); c++) {
            grid.add(cell(Texts.of(heads.get(c)), "name"), c, 0);
            for (int r = 0; r < rows.size(); r++) {
                grid.add(cell(rows.get(r).get(c), "plan-cell"), c, r + 1);
            }
        }
        nodes.add(Panel.heading(Texts.of(title)));
        nodes.add(grid);
        return nodes;
    }

    private static Label cell(String text, String style) {
        Label label = new Label(text);
        label.getStyleClass().add(style);
        label.setMinWidth(Region.USE_PREF_SIZE);
        return label;
    }
}
