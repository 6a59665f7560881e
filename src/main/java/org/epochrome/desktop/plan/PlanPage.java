package org.epochrome.desktop.plan;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.control.Preferences;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.render.LatestTaskRunner;
import org.epochrome.desktop.state.PlanInputs;
import org.epochrome.desktop.state.PlannedNight;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.plan.Clock;
import org.epochrome.plan.NightPlan;
import org.epochrome.plan.PlanSettings;
import org.epochrome.plan.Quantity;
import org.epochrome.plan.drawing.DiskSketch;
import org.epochrome.plan.limit.PlannedRecording;
import org.epochrome.plan.night.Interval;
import org.epochrome.text.Message;
import org.epochrome.text.Wording;

/** Plans a night: what is typed on the left, what follows from it on the right, at once. */
public final class PlanPage extends BorderPane {
    private static final Duration HALF_A_DAY = Duration.ofHours(12);
    private static final double DISK_WIDTH = 236;
    private static final double DISK_HEIGHT = 200;
    private static final double STRIP_HEIGHT = 54;
    private static final double GLOBE_REACH = 1.35;
    private static final double RING_MARGIN = 0.25;
    private static final double MOONS_REACH = 28;

    private final Preferences preferences;
    private final LatestTaskRunner runner;
    private final Consumer<PlannedNight> use;
    private final PlanForm form;
    private final Label title = new Label();
    private final Label wrong = Panel.prose("");
    private final VBox warnings = new VBox(4);
    private final VBox facts = new VBox();
    private final NightChart chart = new NightChart();
    private final VBox advice = new VBox(4);
    private final VBox recordings = new VBox(6);
    private final VBox limits = new VBox(6);
    private final FlowPane disks = new FlowPane(14, 10);
    private final VBox rest = new VBox(6);
    private final VBox answer;
    private final Button useIt = new Button(Texts.of("plan.use"));
    private final Button save = new Button(Texts.of("plan.save"));
    private final List<DiskChart> charts = new ArrayList<>();
    private Palette palette = Palette.DARK;
    private Optional<NightPlan> plan = Optional.empty();

    /** What is drawn of a plan, made in the background. */
    private record Made(NightPlan plan, List<Aspect> disks) {}

    /**
     * @param runner computes plans in the background
     * @param use takes a plan whose recordings are to be compared with frames
     * @param saves asks for a file and saves a plan
     */
    public PlanPage(
            Preferences preferences, LatestTaskRunner runner, Consumer<PlannedNight> use, Consumer<NightPlan> saves) {
        this.preferences = preferences;
        this.runner = runner;
        this.use = use;
        form = new PlanForm(preferences, this::compute);
        setId("plan");
        getStyleClass().add("plan");
        title.getStyleClass().add("plan-title");
        wrong.setId("plan-wrong");
        wrong.getStyleClass().add("doubt");
        useIt.setId("plan-use");
        useIt.setTooltip(new Tooltip(Texts.of("plan.use.tip")));
        useIt.setOnAction(e -> plan.ifPresent(this::take));
        save.setId("plan-save");
        save.setTooltip(new Tooltip(Texts.of("plan.save.tip")));
        save.setOnAction(e -> plan.ifPresent(saves));
        Button close = new Button(Texts.of("plan.close"));
        close.setId("plan-close");
        close.setOnAction(e -> close());
        Region space = new Region();
        HBox.setHgrow(space, Priority.ALWAYS);
        HBox head = new HBox(8, title, space, useIt, save, close);
        head.setAlignment(Pos.CENTER_LEFT);
        head.getStyleClass().add("plan-head");
        answer = new VBox(14, warnings, facts, chart, advice, recordings, limits, disks, rest);
        answer.getStyleClass().add("plan-answer");
        VBox right = new VBox(wrong, answer);
        right.getStyleClass().add("plan-right");
        setTop(head);
        setLeft(scrolled(form));
        setCenter(scrolled(right));
        setVisible(false);
    }

    private static ScrollPane scrolled(Region content) {
        ScrollPane pane = new ScrollPane(content);
        pane.setFitToWidth(true);
        pane.setFocusTraversable(false);
        pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        return pane;
    }

    /** Shows the page with what was typed last, for the coming night. */
    public void open(LocalDate night) {
        form.fill(preferences.plan(), night);
        setVisible(true);
        compute();
        form.requestFocus();
    }

    /** Goes back to the picture. */
    public void close() {
        setVisible(false);
        runner.cancel();
    }

    /** Changes the colours of the drawings. */
    public void setPalette(Palette next) {
        palette = next;
        chart.setPalette(next);
        charts.forEach(c -> c.setPalette(next));
    }

    private void compute() {
        PlanSettings settings;
        PlanInputs inputs = form.inputs();
        try {
            if (form.date() == null) {
                throw new IllegalArgumentException(Texts.of("plan.missing", Texts.of("plan.date")));
            }
            settings = PlanReader.settings(inputs, form.date());
        } catch (IllegalArgumentException e) {
            runner.cancel();
            failed(e.getMessage());
            return;
        }
        runner.submit(
                progress -> {
                    NightPlan made = NightPlan.of(settings);
                    return new Made(made, aspects(made));
                },
                made -> {
                    preferences.setPlan(inputs);
                    show(made);
                },
                e -> failed(e.getMessage()),
                (part, doing) -> {});
    }

    private void failed(String sentence) {
        plan = Optional.empty();
        Panel.say(wrong, sentence);
        title.setText(Texts.of("plan"));
        answer.setVisible(false);
        useIt.setDisable(true);
        save.setDisable(true);
    }

    private void show(Made made) {
        NightPlan next = made.plan;
        plan = Optional.of(next);
        Panel.say(wrong, "");
        title.setText(Texts.of(
                "plan.title",
                next.settings().body().displayName(),
                next.settings().date(),
                new Clock(next.settings().clock()).name()));
        answer.setVisible(true);
        useIt.setDisable(next.sequence().isEmpty());
        save.setDisable(false);
        PlanTables tables = new PlanTables(next);
        sentences(warnings, Texts.of("plan.warnings"), next.warnings(), "doubt");
        facts.getChildren().setAll(tables.facts());
        chart.show(next);
        sentences(advice, Texts.of("plan.advice"), next.advice(), "plan-cell");
        recordings.getChildren().setAll(tables.recordings());
        limits.getChildren().setAll(tables.bands());
        showDisks(made);
        List<Node> more = new ArrayList<>(tables.motion());
        more.addAll(tables.events());
        rest.getChildren().setAll(more);
    }

    private static void sentences(VBox box, String title, List<Message> sentences, String style) {
        box.getChildren().clear();
        if (!sentences.isEmpty()) {
            box.getChildren().add(Panel.heading(title));
            for (Message sentence : sentences) {
                Label label = Panel.prose(sentence.in(Wording.WINDOW));
                label.getStyleClass().add(style);
                box.getChildren().add(label);
            }
        }
    }

    private void showDisks(Made made) {
        charts.clear();
        disks.getChildren().clear();
        Body body = made.plan.settings().body();
        double reach = body.rings().isPresent() ? body.reachRadii() + RING_MARGIN : GLOBE_REACH;
        for (Aspect aspect : made.disks) {
            disk(aspect, DiskChart.asInTheSky(DISK_WIDTH, DISK_HEIGHT, reach), caption(made.plan, aspect));
        }
        if (made.disks.size() == 3 && !DiskSketch.of(made.disks.get(1)).spots().isEmpty()) {
            Aspect best = made.disks.get(1);
            disk(
                    best,
                    DiskChart.alongTheEquator(3 * DISK_WIDTH + 28, STRIP_HEIGHT, MOONS_REACH),
                    Texts.of("plan.moons", new Clock(made.plan.settings().clock()).minutes(best.utc())));
        }
    }

    private void disk(Aspect aspect, DiskChart drawing, String caption) {
        drawing.setPalette(palette);
        drawing.show(DiskSketch.of(aspect), caption);
        charts.add(drawing);
        Label text = new Label(caption);
        text.getStyleClass().add("name");
        text.setWrapText(true);
        text.setMaxWidth(drawing.getWidth());
        disks.getChildren().add(new VBox(3, drawing, text));
    }

    private static String caption(NightPlan plan, Aspect a) {
        StringBuilder meridians = new StringBuilder();
        for (RotationSystem s : a.body().systems().stream().sorted().toList()) {
            meridians
                    .append(s == RotationSystem.SINGLE ? "" : s.key() + " ")
                    .append(Quantity.deg(a.centralMeridianDeg(s), 0))
                    .append("  ");
        }
        return Texts.of(
                "plan.disk",
                new Clock(plan.settings().clock()).minutes(a.utc()),
                meridians.toString().strip(),
                a.horizontal().map(h -> Quantity.deg(h.altitudeDeg(), 0)).orElse(Quantity.NONE));
    }

    /** The aspects at the beginning, the best moment and the end of the time in which the planet can be recorded. */
    private static List<Aspect> aspects(NightPlan plan) {
        return plan.best()
                .map(best -> {
                    Interval interval = plan.night().usable().stream()
                            .filter(i -> i.contains(best.utc()))
                            .findFirst()
                            .orElseThrow();
                    boolean edge =
                            best.utc().equals(interval.start()) || best.utc().equals(interval.end());
                    Instant middle =
                            edge ? interval.start().plus(interval.duration().dividedBy(2)) : best.utc();
                    return List.of(interval.start(), middle, interval.end()).stream()
                            .map(t -> Ephemeris.aspect(
                                    plan.settings().body(),
                                    t,
                                    Optional.of(plan.settings().site())))
                            .toList();
                })
                .orElse(List.of());
    }

    /** Hands on how long recordings may last. */
    private void take(NightPlan made) {
        made.sequence().ifPresent(sequence -> {
            Map<String, Duration> lengths = new TreeMap<>();
            for (PlannedRecording r : sequence.recordings()) {
                lengths.merge(r.band().name(), r.length(), (a, b) -> a.compareTo(b) > 0 ? a : b);
            }
            Instant midnight = made.night().midnight();
            use.accept(new PlannedNight(
                    made.settings().body(), midnight.minus(HALF_A_DAY), midnight.plus(HALF_A_DAY), lengths));
        });
    }
}
