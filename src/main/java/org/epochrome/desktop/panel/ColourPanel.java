package org.epochrome.desktop.panel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.UnaryOperator;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.GridPane;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.colour.finish.Look;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Assignment;

/** White balance, tone, and which bands make the picture. */
public final class ColourPanel extends Panel {
    private static final String NONE = "none";

    private final ComboBox<White> white;
    private final FormField gains;
    private final Label meaning = prose("");
    private final Slider brightness;
    private final Slider black;
    private final Slider contrast;
    private final Slider saturation;
    private final List<Label> values = new ArrayList<>();
    private final ComboBox<String> red;
    private final ComboBox<String> green;
    private final ComboBox<String> blue;
    private final ComboBox<String> luminance;

    public ColourPanel(Workspace bench) {
        super(bench);
        white = choice(
                "white",
                "Which colour the whole disk gets",
                Arrays.asList(White.values()),
                ColourPanel::title,
                w -> look(
                        "set the white balance",
                        l -> new Look(
                                w == White.SOLAR ? WhiteBalance.solar(Gains.NONE) : WhiteBalance.of(w),
                                l.sharpening(),
                                l.tone(),
                                l.framing())));
        gains = new FormField(
                "gains",
                "1.3, 1, 1.7",
                "Factors of red, green and blue that make a sun-like star white",
                t -> look(
                        "set the gains",
                        l -> new Look(WhiteBalance.solar(parsed(t)), l.sharpening(), l.tone(), l.framing())));
        GridPane balance = grid();
        row(balance, "White", white);
        row(balance, "Gains", gains);
        brightness = tone(
                "brightness",
                "Where the brightest part of the disk is shown",
                0.05,
                1,
                v -> t -> new Tone(v, t.black(), t.contrast(), t.saturation()));
        black = tone(
                "black",
                "What is shown black; 0 keeps the faintest light",
                0,
                0.5,
                v -> t -> new Tone(t.brightness(), v, t.contrast(), t.saturation()));
        contrast = tone(
                "contrast",
                "Steepness of the middle tones",
                0.2,
                3,
                v -> t -> new Tone(t.brightness(), t.black(), v, t.saturation()));
        saturation = tone(
                "saturation",
                "Strength of the colours; 0 is grey, 1 as they are",
                0,
                3,
                v -> t -> new Tone(t.brightness(), t.black(), t.contrast(), v));
        GridPane tone = grid();
        for (Slider slider : List.of(brightness, black, contrast, saturation)) {
            Label value = value(slider.getId() + "-value");
            value.setMinWidth(38);
            values.add(value);
            String name = slider.getId();
            row(tone, Character.toUpperCase(name.charAt(0)) + name.substring(1), pair(slider, value));
        }
        red = band("as-red", "Red", (a, b) -> new Assignment(b, a.green(), a.blue(), a.luminance()));
        green = band("as-green", "Green", (a, b) -> new Assignment(a.red(), b, a.blue(), a.luminance()));
        blue = band("as-blue", "Blue", (a, b) -> new Assignment(a.red(), a.green(), b, a.luminance()));
        luminance = band(
                "as-luminance",
                "Fine brightness",
                (a, b) -> new Assignment(
                        a.red(), a.green(), a.blue(), b.equals(NONE) ? Optional.empty() : Optional.of(b)));
        GridPane bands = grid();
        row(bands, "Red", red);
        row(bands, "Green", green);
        row(bands, "Blue", blue);
        row(bands, "Brightness", luminance);
        getChildren().addAll(balance, meaning, heading("Tone"), tone, heading("Bands shown as"), bands);
    }

    private static String title(White w) {
        return switch (w) {
            case PHOTOMETRIC -> "planet's own";
            case DISK -> "grey disk";
            case SOLAR -> "by a star";
            case NONE -> "none";
        };
    }

    private static String described(White w) {
        return switch (w) {
            case PHOTOMETRIC -> "By the planet's published albedos: sunlight is white.";
            case DISK -> "Equal means of red, green and blue over the lit disk.";
            case SOLAR -> "Gains measured on a sun-like star or a white target in sunlight.";
            case NONE -> "No balance: filters and camera show in the colours.";
        };
    }

    private static Gains parsed(String text) {
        String[] parts = text.split("[,;]\\s*|\\s+", -1);
        if (parts.length != 3) {
            throw new IllegalArgumentException("Write three factors, such as 1.3, 1, 1.7.");
        }
        return new Gains(Numbers.number(parts[0]), Numbers.number(parts[1]), Numbers.number(parts[2]));
    }

    private Slider tone(String id, String teaches, double from, double to, DoubleFunction<UnaryOperator<Tone>> change) {
        return slider(
                id,
                teaches,
                from,
                to,
                v -> bench.tryOut(s -> s.with(toned(s.look(), change.apply(v)))),
                v -> bench.editSession("set the " + id, s -> s.with(toned(s.look(), change.apply(v)))));
    }

    private static Look toned(Look l, UnaryOperator<Tone> change) {
        return new Look(l.white(), l.sharpening(), change.apply(l.tone()), l.framing());
    }

    private void look(String name, UnaryOperator<Look> change) {
        bench.editSession(name, s -> s.with(change.apply(s.look())));
    }

    private interface Put {
        Assignment set(Assignment a, String band);
    }

    private ComboBox<String> band(String id, String colour, Put put) {
        return choice(
                id,
                "The band shown as " + colour.toLowerCase(Locale.ROOT),
                List.of(),
                b -> b,
                b -> bench.editSession(
                        "assign bands",
                        s -> s.with(s.recipe().with(put.set(s.recipe().assignment(), b)))));
    }

    @Override
    void renew() {
        Optional<Session> session = bench.draft().session();
        setDisable(session.isEmpty());
        session.ifPresent(s -> {
            Look l = s.look();
            white.setValue(l.white().white());
            meaning.setText(described(l.white().white()));
            gains.setDisable(l.white().white() != White.SOLAR);
            gains.show(l.white()
                    .solar()
                    .map(g -> Numbers.plain(g.red()) + ", " + Numbers.plain(g.green()) + ", " + Numbers.plain(g.blue()))
                    .orElse(""));
            show(brightness, l.tone().brightness(), 0);
            show(black, l.tone().black(), 1);
            show(contrast, l.tone().contrast(), 2);
            show(saturation, l.tone().saturation(), 3);
            Assignment a = s.recipe().assignment();
            List<String> names = s.recipe().frames().all().stream()
                    .flatMap(f -> f.band().band().map(b -> List.of(b.name())).orElse(List.of("R", "G", "B")).stream())
                    .distinct()
                    .toList();
            show(red, names, a.red());
            show(green, names, a.green());
            show(blue, names, a.blue());
            List<String> more = new ArrayList<>(names);
            more.add(NONE);
            show(luminance, more, a.luminance().orElse(NONE));
        });
    }

    private void show(Slider slider, double value, int row) {
        if (!slider.isValueChanging()) {
            slider.setValue(value);
        }
        values.get(row).setText(Numbers.text("%.2f", value));
    }

    private static void show(ComboBox<String> box, List<String> names, String value) {
        box.getItems().setAll(names);
        box.setValue(value);
    }
}
