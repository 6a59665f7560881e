package org.epochrome.desktop.frames;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import javafx.collections.FXCollections;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import org.epochrome.desktop.control.FrameChanges;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.FormField;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.state.UnidentifiedFile;
import org.epochrome.desktop.style.Texts;
import org.epochrome.io.identify.SheetRow;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.time.RecordingSpan;
import org.epochrome.time.UtcText;

/** A file whose band or times are not known, with fields to enter them. */
final class FrameQuestion extends VBox {
    private Instant from;
    private Instant until;

    FrameQuestion(Workspace bench, UnidentifiedFile ask) {
        super(6);
        getStyleClass().add("question");
        Label problem = Panel.prose(ask.problem());
        problem.getStyleClass().add("doubt");
        ComboBox<String> band = new ComboBox<>(FXCollections.observableArrayList(FramePanel.BANDS));
        band.setId("ask-band");
        band.setPromptText(Texts.of("panel.question.band.prompt"));
        band.setMaxWidth(Double.MAX_VALUE);
        FormField start = new FormField("ask-start", "2031-05-02 21:14:05", Texts.of("panel.frame.start.tip"), t -> {
            from = UtcText.parse(t);
        });
        FormField end = new FormField("ask-end", "2031-05-02 21:16:05", Texts.of("panel.frame.end.tip"), t -> {
            until = UtcText.parse(t);
        });
        GridPane grid = Panel.grid();
        Panel.row(grid, Texts.of("panel.frame.band"), band);
        Panel.row(grid, Texts.of("panel.frame.start"), start);
        Panel.row(grid, Texts.of("panel.frame.end"), end);
        Label half = Panel.prose("");
        half.getStyleClass().add("doubt");
        Panel.say(half, "");
        Button take = new Button(Texts.of("panel.question.add"));
        take.setId("ask-take");
        take.getStyleClass().add("accent");
        take.setOnAction(e -> {
            if ((from == null) != (until == null) || (from != null && until.isBefore(from))) {
                Panel.say(half, Texts.of("panel.question.times"));
                return;
            }
            Optional<RecordingSpan> span = Optional.ofNullable(from).map(begin -> new RecordingSpan(begin, until));
            bench.settle(new FrameRequest(
                    ask.file(),
                    Optional.empty(),
                    Optional.of(
                            new SheetRow(ask.file(), Optional.ofNullable(band.getValue()), span, FrameChanges.TYPED))));
        });
        Button drop = new Button(Texts.of("panel.frame.discard"));
        drop.setOnAction(e -> bench.edit(Texts.of("step.discardFile"), d -> d.without(Set.of(ask.file()))));
        getChildren().addAll(Panel.heading(ask.name()), problem, grid, half, Panel.pair(take, drop));
    }
}
