package org.epochrome.desktop.look;

import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.panel.FormField;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.GridPane;
import org.epochrome.choice.Choices;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.colour.finish.Look;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Assignment;

/** White balance, tone, and which bands make the picture. */
public final class ColourPanel extends Panel {
    /** Stands for no band. */
    private static final String NONE = "";

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
                Texts.of("panel.colour.white.tip"),
                Arrays.asList(White.values()),
                ColourPanel::title,
                w -> look(
                        Texts.of("step.whiteBalance"),
                        l -> l.with(
                                Look::white, w == White.SOLAR ? WhiteBalance.solar(Gains.NONE) : WhiteBalance.of(w))));
        gains = new FormField(
                "gains",
                "1.3, 1, 1.7",
                Texts.of("panel.colour.gains.tip"),
                t -> look(Texts.of("step.gains"), l -> l.with(Look::white, WhiteBalance.solar(parsed(t)))));
        GridPane balance = grid();
        row(balance, Texts.of("panel.colour.white"), white);
        row(balance, Texts.of("panel.colour.gains"), gains);
        brightness = tone(
                "brightness",
                Texts.of("panel.colour.brightness.tip"),
                Texts.of("step.brightness"),
                0.05,
                1,
                Tone::brightness);
        black = tone("black", Texts.of("panel.colour.black.tip"), Texts.of("step.black"), 0, 0.5, Tone::black);
        contrast = tone(
                "contrast", Texts.of("panel.colour.contrast.tip"), Texts.of("step.contrast"), 0.2, 3, Tone::contrast);
        saturation = tone(
                "saturation",
                Texts.of("panel.colour.saturation.tip"),
                Texts.of("step.saturation"),
                0,
                3,
                Tone::saturation);
        GridPane tone = grid();
        for (Slider slider : List.of(brightness, black, contrast, saturation)) {
            Label value = value(slider.getId() + "-value");
            value.setMinWidth(38);
            values.add(value);
        }
        row(tone, Texts.of("panel.colour.brightness"), pair(brightness, values.get(0)));
        row(tone, Texts.of("panel.colour.black"), pair(black, values.get(1)));
        row(tone, Texts.of("panel.colour.contrast"), pair(contrast, values.get(2)));
        row(tone, Texts.of("panel.colour.saturation"), pair(saturation, values.get(3)));
        red = band("as-red", Texts.of("panel.colour.red.tip"), (a, b) -> a.with(Assignment::red, b));
        green = band("as-green", Texts.of("panel.colour.green.tip"), (a, b) -> a.with(Assignment::green, b));
        blue = band("as-blue", Texts.of("panel.colour.blue.tip"), (a, b) -> a.with(Assignment::blue, b));
        luminance = band(
                "as-luminance",
                Texts.of("panel.colour.luminance.tip"),
                (a, b) -> a.with(Assignment::luminance, b.equals(NONE) ? Optional.empty() : Optional.of(b)));
        GridPane bands = grid();
        row(bands, Texts.of("panel.colour.red"), red);
        row(bands, Texts.of("panel.colour.green"), green);
        row(bands, Texts.of("panel.colour.blue"), blue);
        row(bands, Texts.of("panel.colour.luminance"), luminance);
        getChildren()
                .addAll(
                        balance,
                        meaning,
                        heading(Texts.of("panel.colour.tone")),
                        tone,
                        heading(Texts.of("panel.colour.bands")),
                        bands);
    }

    private static String title(White w) {
        return switch (w) {
            case PHOTOMETRIC -> Texts.of("panel.colour.white.photometric");
            case DISK -> Texts.of("panel.colour.white.disk");
            case SOLAR -> Texts.of("panel.colour.white.star");
            case NONE -> Texts.of("panel.colour.white.none");
        };
    }

    private static String described(White w) {
        return switch (w) {
            case PHOTOMETRIC -> Texts.of("panel.colour.white.photometric.help");
            case DISK -> Texts.of("panel.colour.white.disk.help");
            case SOLAR -> Texts.of("panel.colour.white.star.help");
            case NONE -> Texts.of("panel.colour.white.none.help");
        };
    }

    private static Gains parsed(String text) {
        String[] parts = text.split("[,;]\\s*|\\s+", -1);
        if (parts.length != 3) {
            throw new IllegalArgumentException(Texts.of("panel.colour.gains.wrong"));
        }
        return new Gains(Numbers.number(parts[0]), Numbers.number(parts[1]), Numbers.number(parts[2]));
    }

    private Slider tone(
            String id, String teaches, String step, double from, double to, Choices.Component<Tone, Double> choice) {
        return slider(
                id,
                teaches,
                from,
                to,
                v -> bench.tryOut(s -> s.with(toned(s.look(), choice, v))),
                v -> bench.editSession(step, s -> s.with(toned(s.look(), choice, v))));
    }

    private static Look toned(Look l, Choices.Component<Tone, Double> choice, double value) {
        return l.with(Look::tone, l.tone().with(choice, value));
    }

    private void look(String name, UnaryOperator<Look> change) {
        bench.editSession(name, s -> s.with(change.apply(s.look())));
    }

    private interface Put {
        Assignment set(Assignment a, String band);
    }

    private ComboBox<String> band(String id, String teaches, Put put) {
        return choice(
                id,
                teaches,
                List.of(),
                b -> b.equals(NONE) ? Texts.of("panel.colour.luminance.none") : b,
                b -> bench.editSession(
                        Texts.of("step.bands"),
                        s -> s.with(s.recipe().with(put.set(s.recipe().assignment(), b)))));
    }

    @Override
    protected void renew() {
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
