package org.epochrome.desktop.view;

import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.epochrome.desktop.control.SessionController;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.render.BackgroundWork;
import org.epochrome.desktop.render.ScreenPicture;
import org.epochrome.desktop.style.Texts;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.evidence.LimbStrip;
import org.epochrome.session.schedule.FrameOrientation;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** The last line: what is under the cursor, what is being done, what was done. */
final class StatusLine extends HBox {
    private final Label under = new Label();
    private final Label said = new Label();

    /** @param reveal shows what was saved in its folder */
    StatusLine(Workspace bench, SessionController controller, Runnable reveal) {
        getStyleClass().add("status-line");
        setAlignment(Pos.CENTER_LEFT);
        under.setId("under");
        said.setId("said");
        said.textProperty().bind(controller.saidProperty());
        said.setMinWidth(0);
        BackgroundWork work = bench.renderer().work();
        Label doing = new Label();
        doing.textProperty().bind(work.doingProperty());
        ProgressBar bar = new ProgressBar();
        bar.setId("progress");
        bar.progressProperty().bind(work.fractionProperty());
        bar.setPrefWidth(130);
        Button stop = new Button("", new FontIcon(Feather.X));
        stop.setId("stop");
        stop.getStyleClass().add("flat");
        stop.setAccessibleText(Texts.of("status.stop"));
        stop.setTooltip(new Tooltip(Texts.of("status.stop.tip")));
        stop.setOnAction(e -> bench.renderer().cancel());
        HBox busy = new HBox(8, doing, bar, stop);
        busy.setAlignment(Pos.CENTER_RIGHT);
        busy.setMinWidth(Region.USE_PREF_SIZE);
        busy.visibleProperty().bind(work.busyProperty());
        busy.managedProperty().bind(work.busyProperty());
        Region space = new Region();
        HBox.setHgrow(space, Priority.ALWAYS);
        Button folder = new Button(Texts.of("status.reveal"));
        folder.setId("reveal");
        folder.setTooltip(new Tooltip(Texts.of("status.reveal.tip")));
        folder.setMinWidth(Region.USE_PREF_SIZE);
        folder.setOnAction(e -> reveal.run());
        folder.setVisible(false);
        folder.managedProperty().bind(folder.visibleProperty());
        controller.savedProperty().addListener((o, old, now) -> folder.setVisible(now.isPresent()));
        getChildren().addAll(under, space, said, folder, busy);
    }

    /** Says what lies at a pixel of the picture. */
    void show(Optional<ScreenPicture> shown, RotationSystem system, double[] pixel) {
        if (shown.isEmpty() || pixel == null) {
            under.setText("");
            return;
        }
        ScreenPicture s = shown.get();
        String colours = colours(s, pixel);
        if (s.strip().isPresent()) {
            LimbStrip.Place place = s.strip().get().at(pixel[0], pixel[1]);
            under.setText(
                    colours.isEmpty() ? "" : Texts.of("status.strip", place.angleDeg(), place.outsidePx(), colours));
            return;
        }
        FrameOrientation sight = FrameOrientation.at(s.aspect(), s.disk(), system, pixel[0], pixel[1]);
        under.setText(Texts.of("status.pixel", pixel[0], pixel[1])
                + colours
                + Texts.of("status.distance", sight.fromCentreArcsec())
                + sight.spot()
                        .map(p -> Texts.of(
                                "status.longitude",
                                system == RotationSystem.SINGLE ? "" : system.key() + " ",
                                p.longitudeDeg(),
                                p.latitudeDeg()))
                        .orElse(Texts.of("status.offDisk")));
    }

    /** The values of a pixel; nothing beside the picture. */
    private static String colours(ScreenPicture s, double[] pixel) {
        int column = (int) Math.floor((pixel[0] + 0.5) / s.factor());
        int row = (int) Math.floor((pixel[1] + 0.5) / s.factor());
        if (column < 0 || row < 0 || column >= s.width() || row >= s.height()) {
            return "";
        }
        int argb = s.argb().get(row * s.width() + column);
        return Texts.of("status.values", argb >> 16 & 255, argb >> 8 & 255, argb & 255);
    }
}
