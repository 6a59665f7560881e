package org.epochrome.desktop.view;

import java.nio.file.Path;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.bench.Bench;
import org.epochrome.desktop.bench.Draft;
import org.epochrome.desktop.bench.Keeper;
import org.epochrome.desktop.bench.Remembered;
import org.epochrome.ephemeris.Body;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** What stands in the middle before there is a picture: where to begin, or the one question about the planet. */
final class Invitation extends VBox {
    private final Bench bench;
    private final Keeper keeper;
    private final Remembered remembered;
    private final Runnable open;

    Invitation(Bench bench, Keeper keeper, Remembered remembered, Runnable open) {
        this.bench = bench;
        this.keeper = keeper;
        this.remembered = remembered;
        this.open = open;
        getStyleClass().add("invitation");
        setAlignment(Pos.CENTER);
        setPickOnBounds(false);
        bench.draftProperty().addListener((o, old, now) -> renew());
        bench.studio().shownProperty().addListener((o, old, now) -> renew());
        bench.studio().work().busyProperty().addListener((o, old, now) -> renew());
        renew();
    }

    private void renew() {
        Draft draft = bench.draft();
        boolean wanted = bench.studio().shownProperty().get().isEmpty();
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
            say("These files do not tell all that is needed", "Look at the side: each asks for what is missing.");
        } else if (bench.studio().work().busyProperty().get()) {
            say("A first picture is on its way", "");
        } else {
            say("There is no picture yet", "The message at the top says why.");
        }
    }

    private void say(String title, String text) {
        getChildren().addAll(title(title), Panel.prose(text));
    }

    private static Label title(String text) {
        Label label = new Label(text);
        label.getStyleClass().add("invites");
        return label;
    }

    private void begin() {
        FontIcon icon = new FontIcon(Feather.DOWNLOAD);
        icon.getStyleClass().add("large-icon");
        Button choose = new Button("Choose frames...");
        choose.setId("choose-frames");
        choose.getStyleClass().add("accent");
        choose.setOnAction(e -> open.run());
        Button demo = new Button("Open the demo session");
        demo.setId("open-demo");
        demo.setTooltip(new Tooltip("An invented Jupiter in three bands, to try everything on"));
        demo.setOnAction(e -> keeper.openDemo());
        HBox buttons = new HBox(10, choose, demo);
        buttons.setAlignment(Pos.CENTER);
        Label what = Panel.prose("Stacked images of a planet, one for each filter and recording: FITS, TIFF or PNG,"
                + " linear. A folder, a sheet of times (.csv) or a session (.json) will do as well.");
        what.setMaxWidth(440);
        what.setAlignment(Pos.CENTER);
        getChildren().addAll(icon, title("Drop your frames here"), what, buttons);
        keeper.leftover().ifPresent(path -> {
            Button recover = new Button("Take up the session that was not saved");
            recover.setId("recover");
            recover.getStyleClass().add("warm");
            recover.setOnAction(e -> keeper.recover());
            getChildren().add(recover);
        });
        if (!remembered.sessions().isEmpty()) {
            Label recent = new Label("Recent sessions");
            recent.getStyleClass().add("name");
            getChildren().add(recent);
            remembered.sessions().stream().limit(5).forEach(path -> getChildren()
                    .add(link(path, keeper::open)));
        }
    }

    private static Hyperlink link(Path path, Consumer<Path> opens) {
        Path parent = path.getParent();
        Hyperlink link =
                new Hyperlink((parent == null || parent.getFileName() == null ? "" : parent.getFileName() + "/")
                        + path.getFileName());
        link.setTooltip(new Tooltip(path.toString()));
        link.setOnAction(e -> opens.accept(path));
        return link;
    }

    private void askPlanet(Draft draft) {
        getChildren().add(title("Which planet is it?"));
        Label why = Panel.prose(draft.loose().size() + (draft.loose().size() == 1 ? " frame was" : " frames were")
                + " read; no header names the planet.");
        why.setAlignment(Pos.CENTER);
        getChildren().add(why);
        FlowPane bodies = new FlowPane(8, 8);
        bodies.setAlignment(Pos.CENTER);
        bodies.setMaxWidth(460);
        for (Body body : Body.values()) {
            Button button = new Button(body.displayName());
            button.setId("planet-" + body.name().toLowerCase(java.util.Locale.ROOT));
            button.setOnAction(e -> bench.name(body));
            bodies.getChildren().add(button);
        }
        getChildren().add(bodies);
    }
}
