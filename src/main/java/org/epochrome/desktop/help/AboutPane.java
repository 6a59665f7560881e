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
        Release release = Release.THIS;
        Label version = new Label(release.commit()
                .map(c -> Texts.of(
                        c.modified() ? "about.version.modified" : "about.version.commit",
                        release.version(),
                        c.id(),
                        c.date()))
                .orElseGet(() -> Texts.of("about.version", release.version())));
        version.setId("version");
        Button licences = new Button(Texts.of("about.licences"));
        licences.setId("licences");
        licences.setOnAction(e -> show());
        getChildren().addAll(version, licences);
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
