package org.epochrome.desktop.frames;

import java.time.Duration;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.property.BooleanProperty;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.TitledPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.epochrome.desktop.control.FrameChanges;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.panel.TypedValues;
import org.epochrome.desktop.setup.SetupPage;
import org.epochrome.desktop.style.Texts;
import org.epochrome.io.identify.TimestampMeaning;
import org.epochrome.io.read.DatedFrame;

/** The table of all frames, and what is done with those that are selected. */
final class FrameList extends VBox {
    private final Workspace bench;
    private final FrameTable table;
    private final Label count = Panel.heading("");
    private final ComboBox<TimestampMeaning> meaning = new ComboBox<>();
    private final TextField length = field("length", Texts.of("frames.length.entry.tip"));
    private final TextField offset = field("offset", Texts.of("frames.offset.entry.tip"));
    private final TextField date = field("date", Texts.of("frames.date.entry.tip"));
    private final TextField bands = field("bands", Texts.of("frames.bands.entry.tip"));
    private final Label wrong = Panel.prose("");

    /** @param preview whether the picture shows the selected frame */
    FrameList(Workspace bench, BooleanProperty preview) {
        super(8);
        this.bench = bench;
        table = new FrameTable(bench);
        ToggleButton look = new ToggleButton(Texts.of("frames.preview"));
        look.setId("frame-preview");
        look.setTooltip(new Tooltip(Texts.of("frames.preview.tip")));
        look.selectedProperty().bindBidirectional(preview);
        Button all = new Button(Texts.of("frames.all"));
        all.setId("frames-all");
        all.setTooltip(new Tooltip(Texts.of("frames.all.tip")));
        all.setOnAction(e -> table.getSelectionModel().selectAll());
        Button remove = new Button(Texts.of("frames.remove"));
        remove.setId("frames-remove");
        remove.setTooltip(new Tooltip(Texts.of("frames.remove.tip")));
        remove.setOnAction(e -> remove());
        table.setOnKeyPressed(e -> {
            if (e.getCode() == KeyCode.DELETE) {
                remove();
                e.consume();
            }
        });
        getChildren().addAll(count, table, Panel.pair(look, all, remove), changes());
    }

    private TitledPane changes() {
        meaning.setId("frames-meaning");
        meaning.setTooltip(new Tooltip(Texts.of("setup.meaning.tip")));
        meaning.getItems().setAll(TimestampMeaning.values());
        meaning.setMaxWidth(Double.MAX_VALUE);
        meaning.setPromptText(Texts.of("frames.asIs"));
        meaning.setConverter(new StringConverter<>() {
            @Override
            public String toString(TimestampMeaning m) {
                return m == null ? "" : SetupPage.title(m);
            }

            @Override
            public TimestampMeaning fromString(String text) {
                throw new UnsupportedOperationException();
            }
        });
        wrong.getStyleClass().add("doubt");
        wrong.setId("frames-wrong");
        Panel.say(wrong, "");
        Button apply = new Button(Texts.of("frames.apply"));
        apply.setId("frames-apply");
        apply.setTooltip(new Tooltip(Texts.of("frames.apply.tip")));
        apply.setOnAction(e -> apply());
        GridPane grid = Panel.grid();
        Panel.row(grid, Texts.of("frames.meaning"), meaning);
        Panel.row(grid, Texts.of("frames.length.row"), length);
        Panel.row(grid, Texts.of("frames.offset"), offset);
        Panel.row(grid, Texts.of("frames.date"), date);
        Panel.row(grid, Texts.of("frames.bands"), bands);
        VBox body = new VBox(8, grid, wrong, apply);
        body.getStyleClass().add("changes");
        TitledPane pane = new TitledPane(Texts.of("frames.change"), body);
        pane.setId("frames-change");
        pane.setExpanded(false);
        pane.setAnimated(false);
        return pane;
    }

    private static TextField field(String name, String teaches) {
        TextField field = new TextField();
        field.setId("frames-" + name);
        field.setPromptText(Texts.of("frames.asIs"));
        field.setTooltip(new Tooltip(teaches));
        return field;
    }

    void renew() {
        int frames = bench.draft().frames().size();
        count.setText(frames == 1 ? Texts.of("others.frame") : Texts.of("others.frames", frames));
        boolean any = frames > 0;
        setVisible(any);
        setManaged(any);
        table.renew();
    }

    private List<DatedFrame> selected() {
        return table.selected().stream().map(FrameTable.Row::frame).toList();
    }

    private void remove() {
        Set<java.nio.file.Path> files =
                selected().stream().map(f -> f.head().file()).collect(Collectors.toSet());
        if (!files.isEmpty()) {
            bench.edit(
                    files.size() == 1 ? Texts.of("step.removeFrame") : Texts.of("step.removeFrames", files.size()),
                    d -> d.without(files));
        }
    }

    private void apply() {
        try {
            FrameChanges changes = new FrameChanges(
                    Optional.ofNullable(meaning.getValue()),
                    typed(length).map(TypedValues::length),
                    typed(offset)
                            .map(t -> Duration.ofSeconds(TypedValues.offset(t).getTotalSeconds())),
                    typed(date).map(FrameList::date),
                    typed(bands).map(FrameList::words).orElse(List.of()));
            Panel.say(wrong, "");
            bench.change(selected(), changes);
            meaning.setValue(null);
            List.of(length, offset, date, bands).forEach(TextField::clear);
        } catch (IllegalArgumentException e) {
            Panel.say(wrong, e.getMessage());
        }
    }

    private static Optional<String> typed(TextField field) {
        return field.getText().isBlank()
                ? Optional.empty()
                : Optional.of(field.getText().strip());
    }

    private static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException(Texts.of("frames.date.wrong"), e);
        }
    }

    private static List<String> words(String text) {
        return Arrays.stream(text.split("[\\s,;]+")).filter(w -> !w.isEmpty()).toList();
    }
}
