package org.epochrome.desktop.look;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.Look;
import org.epochrome.desktop.control.Equipment;
import org.epochrome.desktop.control.Preferences;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.FormField;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.render.ScreenPicture;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.epochrome.disk.Disk;

/** What part of the picture is saved and how it lies. */
public final class FramingPanel extends Panel {
    private final ComboBox<Framing.Orientation> orientation;
    private final FormField margin;
    private final FormField enlarge;
    private final FormField canvas;
    private final CheckBox caption = new CheckBox(Texts.of("panel.framing.caption"));

    private final FormField rotate;
    private final FormField text;
    private final Preferences preferences;

    /** @param picker hands over a rectangle drawn on the picture */
    public FramingPanel(Workspace bench, Preferences preferences, PixelPicker picker) {
        super(bench);
        this.preferences = preferences;
        rotate = new FormField(
                "rotate",
                "0",
                Texts.of("panel.framing.rotate.tip"),
                t -> edit(Texts.of("step.rotate"), f -> f.with(Framing::rotate, Numbers.optional(t))));
        text = new FormField(
                "caption-text",
                Texts.of("panel.framing.text.prompt"),
                Texts.of("panel.framing.text.tip"),
                this::setText);
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
        row(grid, Texts.of("panel.framing.rotate"), rotate);
        GridPane line = grid();
        row(line, Texts.of("panel.framing.text"), text);
        getChildren().addAll(grid, crops(picker), caption, line, parts(), prose(Texts.of("panel.framing.help")));
    }

    private Node crops(PixelPicker picker) {
        ToggleButton crop = new ToggleButton(Texts.of("panel.framing.crop"));
        crop.setId("crop");
        crop.setTooltip(new Tooltip(Texts.of("panel.framing.crop.tip")));
        crop.setOnAction(e -> {
            if (crop.isSelected()) {
                picker.askArea(area -> {
                    crop.setSelected(false);
                    cropTo(area);
                });
            } else {
                picker.cancel();
            }
        });
        Button whole = new Button(Texts.of("panel.framing.uncrop"));
        whole.setId("uncrop");
        whole.setTooltip(new Tooltip(Texts.of("panel.framing.uncrop.tip")));
        whole.setOnAction(e -> edit(Texts.of("step.crop"), f -> Framing.AS_SHOT
                .with(Framing::orientation, f.orientation())
                .with(Framing::caption, f.caption())
                .with(Framing::captionText, f.captionText())));
        return pair(crop, whole);
    }

    /** Makes a rectangle of the framed picture the whole of it. */
    private void cropTo(double[] area) {
        Optional<ScreenPicture> shown = bench.renderer()
                .shownProperty()
                .get()
                .filter(s -> s.form() == ScreenPicture.Form.FRAMED && s.factor() == 1);
        if (shown.isPresent() && bench.combination().isPresent()) {
            Disk disk = shown.get().disk();
            double radius = disk.equatorialRadiusPx();
            double scale = radius / bench.combination().get().disk().equatorialRadiusPx();
            int width = Math.max(16, (int) Math.rint(area[2] - area[0]));
            int height = Math.max(16, (int) Math.rint(area[3] - area[1]));
            Framing.Centre centre = new Framing.Centre(
                    thousandth((0.5 * (area[0] + area[2]) - disk.x()) / radius),
                    thousandth((0.5 * (area[1] + area[3]) - disk.y()) / radius));
            edit(Texts.of("step.crop"), f -> f.with(Framing::margin, OptionalDouble.empty())
                    .with(Framing::enlarge, OptionalDouble.of(thousandth(scale)))
                    .with(Framing::canvas, Optional.of(new Framing.Canvas(width, height)))
                    .with(Framing::centre, Optional.of(centre)));
        }
    }

    private static double thousandth(double value) {
        return Math.rint(1000 * value) / 1000;
    }

    /** Buttons that add a part to the caption's own line. */
    private Node parts() {
        return new FlowPane(
                6,
                6,
                part(
                        "caption-place",
                        Texts.of("panel.framing.place"),
                        Texts.of("panel.framing.place.tip"),
                        this::place),
                part(
                        "caption-equipment",
                        Texts.of("panel.framing.equipment"),
                        Texts.of("panel.framing.equipment.tip"),
                        this::equipment),
                part(
                        "caption-direction",
                        Texts.of("panel.framing.direction"),
                        Texts.of("panel.framing.direction.tip"),
                        this::direction));
    }

    private Button part(String id, String name, String teaches, Supplier<Optional<String>> words) {
        Button button = new Button(name);
        button.setId(id);
        button.setTooltip(new Tooltip(teaches));
        button.setOnAction(e -> words.get().ifPresent(more -> {
            String now = text.getText().strip();
            setText(now.isEmpty() ? more : now + "   " + more);
        }));
        return button;
    }

    private void setText(String words) {
        edit(Texts.of("step.captionText"), f -> f.with(
                        Framing::captionText, words.isBlank() ? Optional.empty() : Optional.of(words))
                .with(Framing::caption, f.caption() || !words.isBlank()));
    }

    private Optional<String> place() {
        return bench.draft()
                .recipe()
                .flatMap(r -> r.place().site())
                .map(s -> Texts.of(
                        "panel.framing.place.text",
                        Math.abs(s.latitudeDeg()),
                        s.latitudeDeg() < 0 ? "S" : "N",
                        Math.abs(s.longitudeDeg()),
                        s.longitudeDeg() < 0 ? "W" : "E"));
    }

    private Optional<String> equipment() {
        Equipment e = preferences.equipment();
        if (e.apertureMm() == null) {
            return Optional.empty();
        }
        String aperture = Numbers.plain(e.apertureMm());
        return Optional.of(
                e.focalLengthMm() == null
                        ? Texts.of("panel.framing.equipment.text", aperture)
                        : Texts.of("panel.framing.equipment.focal", aperture, Numbers.plain(e.focalLengthMm())));
    }

    private Optional<String> direction() {
        return bench.draft().session().flatMap(s -> {
            Framing f = s.look().framing();
            double more = f.rotate().orElse(0);
            if (more == 0 && f.orientation() != Framing.Orientation.AS_SHOT) {
                return Optional.of(
                        f.orientation() == Framing.Orientation.NORTH_UP
                                ? Texts.of("panel.framing.direction.north")
                                : Texts.of("panel.framing.direction.south"));
            }
            double base = f.orientation() == Framing.Orientation.SOUTH_UP ? 180 : 0;
            return bench.combination()
                    .map(c -> f.orientation() == Framing.Orientation.AS_SHOT
                            ? c.disk().northAngleDeg()
                            : base)
                    .map(north -> Texts.of("panel.framing.direction.angle", Disk.wrapDeg(north + more)));
        });
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
            rotate.show(Numbers.plain(f.rotate()));
            text.show(f.captionText().orElse(""));
            caption.setSelected(f.caption());
        });
    }
}
