package org.epochrome.desktop.panel;

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

/** What part of the picture is saved and how it lies. */
public final class FramingPanel extends Panel {
    private final ComboBox<Framing.Orientation> orientation;
    private final FormField margin;
    private final FormField enlarge;
    private final FormField canvas;
    private final CheckBox caption = new CheckBox("Caption below the picture");

    public FramingPanel(Workspace bench) {
        super(bench);
        orientation = choice(
                "orientation",
                "Which way is up; north up and south up also undo a mirror",
                Arrays.asList(Framing.Orientation.values()),
                o -> switch (o) {
                    case AS_SHOT -> "as shot";
                    case NORTH_UP -> "north up";
                    case SOUTH_UP -> "south up";
                },
                o -> edit("turn the picture", f -> new Framing(o, f.margin(), f.enlarge(), f.canvas(), f.caption())));
        margin = new FormField(
                "margin",
                "whole frame",
                "What is left around the disk and its rings, in equatorial radii",
                t -> edit(
                        "crop the picture",
                        f -> new Framing(f.orientation(), Numbers.optional(t), f.enlarge(), f.canvas(), f.caption())));
        enlarge = new FormField(
                "enlarge",
                "1",
                "Factor on sizes; empty fills the canvas, if there is one",
                t -> edit(
                        "enlarge the picture",
                        f -> new Framing(f.orientation(), f.margin(), Numbers.optional(t), f.canvas(), f.caption())));
        canvas = new FormField(
                "canvas",
                "what it takes",
                "Width x height of the saved picture, pixels, such as 1200x900",
                t -> edit(
                        "set the canvas",
                        f -> new Framing(f.orientation(), f.margin(), f.enlarge(), parsed(t), f.caption())));
        caption.setId("caption");
        caption.setTooltip(
                new Tooltip("Planet, epoch, central meridian, diameter, altitude and bands, below the picture"));
        caption.setOnAction(e -> edit(
                "set the caption",
                f -> new Framing(f.orientation(), f.margin(), f.enlarge(), f.canvas(), caption.isSelected())));
        GridPane grid = grid();
        row(grid, "Up", orientation);
        row(grid, "Margin (radii)", margin);
        row(grid, "Enlarge", enlarge);
        row(grid, "Canvas (px)", canvas);
        getChildren()
                .addAll(
                        grid,
                        caption,
                        prose(
                                "While this page is open, the picture is shown as it will be saved. Elsewhere it stays as it"
                                        + " was shot, on the pixels of the reference frame."));
    }

    private static Optional<Framing.Canvas> parsed(String text) {
        if (text.isBlank()) {
            return Optional.empty();
        }
        String[] parts = text.toLowerCase(java.util.Locale.ROOT).split("\\s*x\\s*", -1);
        if (parts.length != 2) {
            throw new IllegalArgumentException("Write width x height, such as 1200x900.");
        }
        return Optional.of(new Framing.Canvas(Integer.parseInt(parts[0].strip()), Integer.parseInt(parts[1].strip())));
    }

    private void edit(String name, UnaryOperator<Framing> change) {
        bench.editSession(name, s -> {
            Look l = s.look();
            return s.with(new Look(l.white(), l.sharpening(), l.tone(), change.apply(l.framing())));
        });
    }

    @Override
    void renew() {
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
