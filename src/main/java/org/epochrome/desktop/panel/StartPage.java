package org.epochrome.desktop.panel;

import java.nio.file.Path;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.control.Preferences;
import org.epochrome.desktop.control.SessionController;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.recovery.UnsavedSession;
import org.epochrome.desktop.state.Draft;
import org.epochrome.desktop.style.Texts;
import org.epochrome.ephemeris.Body;
import org.epochrome.io.file.VisibleText;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** What stands in the middle before there is a picture: where to begin, or the one question about the planet. */
public final class StartPage extends VBox {
    private final Workspace bench;
    private final SessionController controller;
    private final Preferences preferences;
    private final Runnable open;
    private final Runnable plan;

    public StartPage(
            Workspace bench, SessionController controller, Preferences preferences, Runnable open, Runnable plan) {
        this.bench = bench;
        this.controller = controller;
        this.preferences = preferences;
        this.open = open;
        this.plan = plan;
        getStyleClass().add("invitation");
        setAlignment(Pos.CENTER);
        bench.draftProperty().addListener((o, old, now) -> renew());
        bench.renderer().shownProperty().addListener((o, old, now) -> renew());
        bench.renderer().work().busyProperty().addListener((o, old, now) -> renew());
        bench.problemProperty().addListener((o, old, now) -> renew());
        renew();
    }

    /** With a bar to scroll by, where the window is small. */
    public ScrollPane scrolled() {
        ScrollPane pane = new ScrollPane(this);
        pane.getStyleClass().add("viewer-over");
        pane.setFitToWidth(true);
        pane.setFocusTraversable(false);
        pane.setFitToHeight(true);
        pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        pane.visibleProperty().bind(visibleProperty());
        return pane;
    }

    private void renew() {
        Draft draft = bench.draft();
        boolean wanted = bench.renderer().shownProperty().get().isEmpty();
        setVisible(wanted);
        getChildren().clear();
        if (!wanted) {
            return;
        }
        if (draft.isEmpty()) {
            begin();
        } else if (draft.session().isEmpty() && !draft.loose().isEmpty()) {
            askPlanet(draft);
        } else if (draft.session().isEmpty()) {
            say(Texts.of("start.incomplete"), Texts.of("start.incomplete.help"));
        } else if (bench.renderer().work().busyProperty().get()) {
            getChildren().add(title(Texts.of("start.making")));
        } else if (!bench.problemProperty().get().isEmpty()) {
            say(Texts.of("start.noPicture"), Texts.of("start.noPicture.help"));
        } else {
            getChildren().add(title(Texts.of("start.noPicture")));
            Button again = new Button(Texts.of("start.again"));
            again.setId("try-again");
            again.setOnAction(e -> bench.renderer().resume());
            getChildren().add(again);
        }
    }

    private void say(String title, String text) {
        getChildren().addAll(title(title), centred(text));
    }

    private static Label centred(String text) {
        Label label = Panel.prose(text);
        label.setMaxWidth(440);
        label.setAlignment(Pos.CENTER);
        return label;
    }

    private static FlowPane row(double width) {
        FlowPane row = new FlowPane(8, 8);
        row.setAlignment(Pos.CENTER);
        row.setMaxWidth(width);
        return row;
    }

    private static Label title(String text) {
        Label label = new Label(text);
        label.getStyleClass().add("invites");
        label.setWrapText(true);
        label.setMinHeight(USE_PREF_SIZE);
        return label;
    }

    private void begin() {
        FontIcon icon = new FontIcon(Feather.DOWNLOAD);
        icon.getStyleClass().add("large-icon");
        Button choose = new Button(Texts.of("start.choose"));
        choose.setId("choose-frames");
        choose.getStyleClass().add("accent");
        choose.setOnAction(e -> open.run());
        Button demo = new Button(Texts.of("start.demo"));
        demo.setId("open-demo");
        demo.setTooltip(new Tooltip(Texts.of("start.demo.tip")));
        demo.setOnAction(e -> controller.openDemo());
        Button night = new Button(Texts.of("start.plan"));
        night.setId("plan-night");
        night.setTooltip(new Tooltip(Texts.of("start.plan.tip")));
        night.setOnAction(e -> plan.run());
        FlowPane buttons = row(560);
        buttons.getChildren().addAll(choose, demo, night);
        Label what = centred(Texts.of("start.drop.help"));
        getChildren().addAll(icon, title(Texts.of("start.drop")), what, buttons);
        controller.leftovers().forEach(this::offer);
        if (!preferences.sessions().isEmpty()) {
            Label recent = new Label(Texts.of("start.recent"));
            recent.getStyleClass().add("name");
            getChildren().add(recent);
            preferences.sessions().stream().limit(5).forEach(path -> getChildren()
                    .add(link(path, controller::open)));
        }
    }

    private void offer(UnsavedSession leftover) {
        Label what = new Label(leftover.title());
        Button restore = new Button(Texts.of("start.restore"));
        restore.getStyleClass().addAll("warm", "restore");
        restore.setOnAction(e -> {
            controller.restore(leftover);
            renew();
        });
        Button discard = new Button(Texts.of("start.discard"));
        discard.getStyleClass().add("discard");
        discard.setTooltip(new Tooltip(Texts.of("start.discard.tip")));
        discard.setOnAction(e -> {
            controller.discard(leftover);
            renew();
        });
        FlowPane row = row(640);
        row.getChildren().addAll(what, restore, discard);
        getChildren().add(row);
    }

    private static Hyperlink link(Path path, Consumer<Path> opens) {
        Path parent = path.getParent();
        Hyperlink link = new Hyperlink(
                VisibleText.of((parent == null || parent.getFileName() == null ? "" : parent.getFileName() + "/")
                        + path.getFileName()));
        link.setTooltip(new Tooltip(VisibleText.of(path.toString())));
        link.setOnAction(e -> opens.accept(path));
        return link;
    }

    private void askPlanet(Draft draft) {
        getChildren().add(title(Texts.of("start.planet")));
        getChildren()
                .add(centred(
                        draft.loose().size() == 1
                                ? Texts.of("start.planet.oneFrame")
                                : Texts.of("start.planet.frames", draft.loose().size())));
        FlowPane bodies = row(640);
        for (Body body : Body.values()) {
            Button button = new Button(body.displayName());
            button.setId("planet-" + body.name().toLowerCase(java.util.Locale.ROOT));
            button.setOnAction(e -> bench.name(body));
            bodies.getChildren().add(button);
        }
        getChildren().add(bodies);
    }
}
