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
        facts.getChildren()
                .add(fact(Texts.of("plan.fact.diameter"), arcsec(diameter, 1) + " = " + px(diameter / scale)));
        plan.best().ifPresent(b -> facts.getChildren()
                .add(fact(Texts.of("plan.fact.highest"), clock.minutes(b.utc()) + ", " + deg(b.altitudeDeg(), 0))));
        plan.motion().ifPresent(m -> facts.getChildren()
                .add(fact(
                        Texts.of("plan.fact.rotation"),
                        Texts.of(
                                "plan.fact.rotation.value",
                                arcsec(m.centre().arcsecPerMin(), 2),
                                px(m.centre().pxPerMin())))));
        for (BandPlan b : plan.bands()) {
            facts.getChildren()
                    .add(fact(
                            Texts.of("plan.fact.longest", b.band().name()),
                            time(b.limit().longestS())));
        }
        return facts;
    }

    private static VBox fact(String name, String value) {
        Label title = new Label(name);
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
                Texts.of("plan.recordings"),
                List.of(
                        Texts.of("plan.set"),
                        Texts.of("plan.band"),
                        Texts.of("plan.start"),
                        Texts.of("plan.end"),
                        Texts.of("plan.length"),
                        Texts.of("plan.altitude")),
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
                Texts.of("plan.limits"),
                List.of(
                        Texts.of("plan.band"),
                        Texts.of("plan.resolution"),
                        Texts.of("plan.longest"),
                        Texts.of("plan.smear"),
                        Texts.of("plan.contrast"),
                        Texts.of("plan.shift"),
                        Texts.of("plan.within"),
                        Texts.of("plan.lowest")),
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
        return section(
                Texts.of("plan.motion"),
                List.of(
                        Texts.of("plan.surfaceLatitude"),
                        Texts.of("plan.speed"),
                        Texts.of("plan.speedPx"),
                        Texts.of("plan.turn")),
                rows);
    }

    private static List<String> rate(String where, Motion.Rate r) {
        return List.of(
                where,
                Texts.of("plan.perMinute", arcsec(r.arcsecPerMin(), 3)),
                Texts.of("plan.perMinute", px(r.pxPerMin())),
                Texts.of("plan.perHour", deg(r.degPerHour(), 2)));
    }

    /** What happens in the night. */
    List<Node> events() {
        List<List<String>> rows = new ArrayList<>();
        for (SkyEvent e : plan.events()) {
            rows.add(List.of(
                    clock.minutes(e.utc()), e.what().toString(), e.observable() ? "" : Texts.of("plan.notObservable")));
        }
        return section(
                Texts.of("plan.events"),
                List.of(Texts.of("plan.time"), Texts.of("plan.event"), Texts.of("plan.remark")),
                rows);
    }

    private static List<Node> section(String title, List<String> heads, List<List<String>> rows) {
        List<Node> nodes = new ArrayList<>();
        if (rows.isEmpty()) {
            return nodes;
        }
        GridPane grid = new GridPane();
        grid.getStyleClass().add("plan-table");
        for (int c = 0; c < heads.size(); c++) {
            grid.add(cell(heads.get(c), "name"), c, 0);
            for (int r = 0; r < rows.size(); r++) {
                grid.add(cell(rows.get(r).get(c), "plan-cell"), c, r + 1);
            }
        }
        nodes.add(Panel.heading(title));
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
