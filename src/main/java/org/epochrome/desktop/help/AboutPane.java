package org.epochrome.desktop.help;

import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.layout.VBox;
import org.epochrome.about.Licences;
import org.epochrome.about.Release;
import org.epochrome.desktop.style.Texts;

/** The program's version and, when asked for, the licences of what it contains. */
public final class AboutPane extends VBox {
    private static final int ROWS = 16;

    public AboutPane() {
        getStyleClass().add("about");
        setSpacing(6);
        Label version = new Label(version(Release.THIS));
        version.setId("version");
        Button licences = new Button(Texts.of("about.licences"));
        licences.setId("licences");
        licences.setOnAction(e -> show());
        getChildren().addAll(version, licences);
    }

    private static String version(Release release) {
        if (release.commit().isEmpty()) {
            return Texts.of("about.version", release.version());
        }
        Release.Commit commit = release.commit().get();
        return commit.modified()
                ? Texts.of("about.version.modified", release.version(), commit.id(), commit.date())
                : Texts.of("about.version.commit", release.version(), commit.id(), commit.date());
    }

    /** The texts take the place of their button. */
    private void show() {
        TextArea text = new TextArea(Licences.page(Texts.of("about.licences.heading")));
        text.setId("licence-texts");
        text.setEditable(false);
        text.setPrefRowCount(ROWS);
        getChildren().set(1, text);
    }
}
