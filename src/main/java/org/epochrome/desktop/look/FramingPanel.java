package org.epochrome.desktop.look;

import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.panel.FormField;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;

/** What part of the picture is saved and how it lies. */
public final class FramingPanel extends Panel {
    private final ComboBox<Framing.Orientation> orientation;
    private final FormField margin;
    private final FormField enlarge;
    private final FormField canvas;
    private final CheckBox caption = new CheckBox(Texts.of("panel.framing.caption"));

    public FramingPanel(Workspace bench) {
        super(bench);
        orientation = choice(
                "orientation",
                Texts.of("panel.framing.orientation.tip"),
                Arrays.asList(Framing.Orientation.values()),
                o -> switch (o) {
                    case AS_SHOT -> Texts.of("panel.framing.asRecorded");
                    case NORTH_UP -> Texts.of("panel.framing.northUp");
                    case SOUTH_UP -> Texts.of("panel.framing.southUp");
                },
                o -> edit(Texts.of("step.orientation"), f -> f.with(Framing::orientation, o)));
        margin = new FormField(
                "margin",
                Texts.of("panel.framing.margin.prompt"),
                Texts.of("panel.framing.margin.tip"),
                t -> edit(Texts.of("step.crop"), f -> f.with(Framing::margin, Numbers.optional(t))));
        enlarge = new FormField(
                "enlarge",
                "1",
                Texts.of("panel.framing.enlarge.tip"),
                t -> edit(Texts.of("step.enlarge"), f -> f.with(Framing::enlarge, Numbers.optional(t))));
        canvas = new FormField(
                "canvas",
                Texts.of("panel.framing.canvas.prompt"),
                Texts.of("panel.framing.canvas.tip"),
                t -> edit(Texts.of("step.canvas"), f -> f.with(Framing::canvas, parsed(t))));
        caption.setId("caption");
        caption.setTooltip(new Tooltip(Texts.of("panel.framing.caption.tip")));
        caption.setOnAction(e -> edit(Texts.of("step.caption"), f -> f.with(Framing::caption, caption.isSelected())));
        GridPane grid = grid();
        row(grid, Texts.of("panel.framing.orientation"), orientation);
        row(grid, Texts.of("panel.framing.margin"), margin);
        row(grid, Texts.of("panel.framing.enlarge"), enlarge);
        row(grid, Texts.of("panel.framing.canvas"), canvas);
        getChildren().addAll(grid, caption, prose(Texts.of("panel.framing.help")));
    }

    private static Optional<Framing.Canvas> parsed(String text) {
        if (text.isBlank()) {
            return Optional.empty();
        }
        String[] parts = text.toLowerCase(java.util.Locale.ROOT).split("\\s*x\\s*", -1);
        if (parts.length != 2) {
            throw new IllegalArgumentException(Texts.of("panel.framing.canvas.wrong"));
        }
        return Optional.of(new Framing.Canvas(Integer.parseInt(parts[0].strip()), Integer.parseInt(parts[1].strip())));
    }

    private void edit(String name, UnaryOperator<Framing> change) {
        bench.editSession(
                name,
                s -> s.with(s.look().with(Look::framing, change.apply(s.look().framing()))));
    }

    @Override
    protected void renew() {
        setDisable(bench.draft().session().isEmpty());
        bench.draft().session().ifPresent(s -> {
            Framing f = s.look().framing();
            orientation.setValue(f.orientation());
            margin.show(Numbers.plain(f.margin()));
            enlarge.show(Numbers.plain(f.enlarge()));
            canvas.show(f.canvas().map(c -> c.width() + "x" + c.height()).orElse(""));
            caption.setSelected(f.caption());
        });
    }
}
