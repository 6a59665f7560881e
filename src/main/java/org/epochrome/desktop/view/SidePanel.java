package org.epochrome.desktop.view;

import java.util.EnumMap;
import java.util.Iterator;
import java.util.Map;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.state.Selection;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.style.CoalescedUpdate;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.verdict.Remarks;
import org.epochrome.session.verdict.Verdict;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** The side: a rail of topics, and the page of the one that is chosen. */
final class SidePanel extends HBox {
    private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
    private static final PseudoClass ASKS = PseudoClass.getPseudoClass("asks");
    private static final PseudoClass SHORT = PseudoClass.getPseudoClass("short");
    private static final PseudoClass SHORTEST = PseudoClass.getPseudoClass("shortest");
    /** From this height on the icons of the rail stand loosely. */
    private static final double ROOM_FOR_RAIL = 440;
    /** Below this height they are smaller, as beside a message in the smallest window. */
    private static final double LITTLE_ROOM_FOR_RAIL = 236;

    private static final Duration BETWEEN = Duration.millis(60);

    private final Workspace bench;
    private final Map<Topic, Panel> panels;
    private final Map<Topic, Button> rail = new EnumMap<>(Topic.class);
    private final CoalescedUpdate renewal = new CoalescedUpdate(this::renew);
    private final Label title = new Label();
    private final ScrollPane page = new ScrollPane();
    private final VBox body = new VBox();
    /** Whether the page shows something; an empty one is folded away. */
    private boolean filled;

    private final Label nothing = Panel.prose(Texts.of("side.empty"));

    SidePanel(Workspace bench, Map<Topic, Panel> panels) {
        this.bench = bench;
        this.panels = panels;
        getStyleClass().add("side");
        VBox buttons = new VBox();
        buttons.getStyleClass().add("rail");
        buttons.setMinHeight(0);
        heightProperty().addListener((o, old, now) -> {
            buttons.pseudoClassStateChanged(SHORT, now.doubleValue() < ROOM_FOR_RAIL);
            buttons.pseudoClassStateChanged(SHORTEST, now.doubleValue() < LITTLE_ROOM_FOR_RAIL);
        });
        int key = 0;
        for (Topic topic : Topic.values()) {
            key++;
            Button button = new Button(topic.title(), new FontIcon(icon(topic)));
            button.setContentDisplay(ContentDisplay.TOP);
            button.setMaxWidth(Double.MAX_VALUE);
            button.setId("topic-" + topic.name().toLowerCase(java.util.Locale.ROOT));
            button.setAccessibleText(topic.title());
            button.setTooltip(new Tooltip(Texts.of("side.page.tip", topic.title(), key, meaning(topic))));
            button.getStyleClass().add("flat");
            button.setOnAction(e -> press(topic));
            rail.put(topic, button);
            buttons.getChildren().add(button);
        }
        title.getStyleClass().add("side-title");
        nothing.getStyleClass().add("nothing");
        page.setFitToWidth(true);
        page.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        VBox.setVgrow(page, Priority.ALWAYS);
        body.getChildren().addAll(title, page);
        body.getStyleClass().add("side-body");
        HBox.setHgrow(body, Priority.ALWAYS);
        getChildren().addAll(body, buttons);
        fold(true);
        bench.selectionProperty().addListener((o, old, now) -> {
            if (old.topic() != now.topic()) {
                fold(false);
            }
            renew();
        });
        bench.draftProperty().addListener((o, old, now) -> renewal.ask());
        bench.renderer().combinationProperty().addListener((o, old, now) -> renewal.ask());
        bench.renderer().detailProperty().addListener((o, old, now) -> renewal.ask());
        renew();
    }

    /**
     * Lays out each page once where nobody sees it, one after the other, as long as none is open: showing it first then takes
     * no longer than later.
     */
    void prepare() {
        StackPane aside = new StackPane();
        aside.setManaged(false);
        aside.setOpacity(0);
        aside.setMouseTransparent(true);
        getChildren().add(aside);
        Iterator<Panel> pages = panels.values().iterator();
        Timeline between = new Timeline(new KeyFrame(BETWEEN, e -> {
            Panel next = pages.next();
            boolean open = getScene() != null
                    && getScene().getWindow() != null
                    && getScene().getWindow().isShowing();
            if (open && !filled) {
                aside.getChildren().setAll(next);
                aside.resize(body.prefWidth(-1), getHeight());
                aside.applyCss();
                aside.layout();
            }
            aside.getChildren().clear();
        }));
        between.setCycleCount(panels.size());
        between.setOnFinished(e -> getChildren().remove(aside));
        between.play();
    }

    /** Opens a page; the one that is open is folded away, so that a small screen has room for the planet. */
    private void press(Topic topic) {
        boolean open = body.isVisible() && bench.selectionProperty().get().topic() == topic;
        bench.select(topic);
        fold(open);
    }

    private void fold(boolean away) {
        body.setVisible(!away);
        body.setManaged(!away);
    }

    private static Feather icon(Topic topic) {
        return switch (topic) {
            case SESSION -> Feather.GLOBE;
            case FRAME -> Feather.FILM;
            case DISK -> Feather.CIRCLE;
            case SHIFT -> Feather.MOVE;
            case COLOUR -> Feather.DROPLET;
            case DETAIL -> Feather.ACTIVITY;
            case FRAMING -> Feather.CROP;
            case EVIDENCE -> Feather.CHECK_SQUARE;
        };
    }

    private static String meaning(Topic topic) {
        return switch (topic) {
            case SESSION -> Texts.of("side.session.tip");
            case FRAME -> Texts.of("side.frame.tip");
            case DISK -> Texts.of("side.disk.tip");
            case SHIFT -> Texts.of("side.shift.tip");
            case COLOUR -> Texts.of("side.colour.tip");
            case DETAIL -> Texts.of("side.detail.tip");
            case FRAMING -> Texts.of("side.framing.tip");
            case EVIDENCE -> Texts.of("side.evidence.tip");
        };
    }

    private void renew() {
        Selection selection = bench.selectionProperty().get();
        Panel panel = panels.get(selection.topic());
        boolean asks = selection.topic() == Topic.FRAME && !bench.draft().isEmpty();
        Node content = bench.draft().session().isPresent() || asks ? panel : nothing;
        panel.refresh();
        if ((content != nothing) != filled) {
            filled = content != nothing;
            fold(!filled);
        }
        if (page.getContent() != content) {
            page.setContent(content);
            page.setVvalue(0);
        }
        title.setText(selection.topic().title());
        rail.forEach((topic, button) -> button.pseudoClassStateChanged(CHOSEN, topic == selection.topic()));
        rail.get(Topic.FRAME)
                .pseudoClassStateChanged(
                        ASKS,
                        !bench.draft().unsettled().isEmpty()
                                || !bench.draft().absent().isEmpty());
        boolean doubts = bench.combination()
                .filter(c -> c.verdict().level() != Verdict.Level.GOOD
                        || !Remarks.of(c.warnings()).warnings().isEmpty())
                .isPresent();
        rail.get(Topic.EVIDENCE).pseudoClassStateChanged(ASKS, doubts);
        boolean noSite =
                bench.draft().recipe().filter(r -> r.place().site().isEmpty()).isPresent();
        rail.get(Topic.SESSION).pseudoClassStateChanged(ASKS, noSite);
    }
}
