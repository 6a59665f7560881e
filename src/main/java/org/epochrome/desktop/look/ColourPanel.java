package org.epochrome.desktop.look;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import java.util.function.UnaryOperator;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import org.epochrome.choice.Choices;
import org.epochrome.colour.Gains;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;
import org.epochrome.colour.finish.Look;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.FormField;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.panel.SliderField;
import org.epochrome.desktop.render.LatestTaskRunner;
import org.epochrome.desktop.render.Levels;
import org.epochrome.desktop.render.ScreenPicture;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Assignment;

/** White balance, tone, and which bands make the picture. */
public final class ColourPanel extends Panel {
    /** Stands for no band. */
    private static final String NONE = "";

    private final ComboBox<White> white;
    private final FormField gains;
    private final Label meaning = prose("");
    private final SliderField brightness;
    private final SliderField black;
    private final SliderField contrast;
    private final SliderField saturation;
    private final GradingForm grading;
    private final Histogram histogram = new Histogram();
    private final CheckBox linear = new CheckBox(Texts.of("panel.colour.histogram.linear"));
    private final LatestTaskRunner counting = new LatestTaskRunner(ForkJoinPool.commonPool(), Platform::runLater, true);
    private Levels levels = Levels.NONE;
    private final ComboBox<String> red;
    private final ComboBox<String> green;
    private final ComboBox<String> blue;
    private final ComboBox<String> luminance;

    /**
     * @param picker hands over a place of the picture
     * @param whiteFrames asks for the frames of a white reference, and measures them
     */
    public ColourPanel(Workspace bench, PixelPicker picker, Runnable whiteFrames) {
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
                new String[] {
                    Texts.of("panel.colour.brightness"),
                    Texts.of("panel.colour.brightness.tip"),
                    Texts.of("step.brightness")
                },
                new double[] {0.05, 1},
                Tone::brightness);
        black = tone(
                "black",
                new String[] {Texts.of("panel.colour.black"), Texts.of("panel.colour.black.tip"), Texts.of("step.black")
                },
                new double[] {0, 0.5},
                Tone::black);
        contrast = tone(
                "contrast",
                new String[] {
                    Texts.of("panel.colour.contrast"), Texts.of("panel.colour.contrast.tip"), Texts.of("step.contrast")
                },
                new double[] {0.2, 3},
                Tone::contrast);
        saturation = tone(
                "saturation",
                new String[] {
                    Texts.of("panel.colour.saturation"),
                    Texts.of("panel.colour.saturation.tip"),
                    Texts.of("step.saturation")
                },
                new double[] {0, 3},
                Tone::saturation);
        GridPane tone = grid();
        row(tone, Texts.of("panel.colour.brightness"), brightness);
        row(tone, Texts.of("panel.colour.black"), black);
        row(tone, Texts.of("panel.colour.contrast"), contrast);
        row(tone, Texts.of("panel.colour.saturation"), saturation);
        grading = new GradingForm(
                (id, name, teaches, range, usual, change) -> sliderField(
                        id,
                        name,
                        teaches,
                        range,
                        usual,
                        v -> bench.tryOut(s -> change.apply(s, v)),
                        v -> bench.editSession(Texts.of("step.grading"), s -> change.apply(s, v))),
                g -> look(Texts.of("step.grading"), l -> l.with(Look::grading, g)));
        linear.setId("histogram-linear");
        linear.setTooltip(new Tooltip(Texts.of("panel.colour.histogram.linear.tip")));
        linear.selectedProperty().addListener((o, old, now) -> histogram.show(levels, now));
        bench.renderer().shownProperty().addListener((o, old, now) -> count());
        sceneProperty().addListener((o, old, now) -> count());
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
                        whites(picker, whiteFrames),
                        histogram,
                        linear,
                        heading(Texts.of("panel.colour.tone")),
                        tone,
                        grading,
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

    /** One click back to the planet's colour, white picked on the picture, white measured on frames. */
    private Node whites(PixelPicker picker, Runnable whiteFrames) {
        Button own = new Button(Texts.of("panel.colour.white.photometric"));
        own.setId("white-photometric");
        own.setTooltip(new Tooltip(Texts.of("panel.colour.white.photometric.help")));
        own.setOnAction(e -> white.setValue(White.PHOTOMETRIC));
        ToggleButton pick = new ToggleButton(Texts.of("panel.colour.pick"));
        pick.setId("white-pick");
        pick.setTooltip(new Tooltip(Texts.of("panel.colour.pick.tip")));
        pick.setOnAction(e -> {
            if (pick.isSelected()) {
                picker.ask(pixel -> {
                    pick.setSelected(false);
                    whiteAt(pixel);
                });
            } else {
                picker.cancel();
            }
        });
        Button measure = new Button(Texts.of("panel.colour.whiteFrame"));
        measure.setId("white-frame");
        measure.setTooltip(new Tooltip(Texts.of("panel.colour.whiteFrame.tip")));
        measure.setOnAction(e -> whiteFrames.run());
        FlowPane row = new FlowPane(6, 6, own, pick, measure);
        return row;
    }

    /** Makes a place of the picture white or grey, by the mean of the pixels around it. */
    private void whiteAt(double[] pixel) {
        bench.combination()
                .flatMap(c -> PixelPicker.white(c.cube(), pixel))
                .ifPresent(measured ->
                        look(Texts.of("step.whiteBalance"), l -> l.with(Look::white, WhiteBalance.solar(measured))));
    }

    /** Counts the levels of what is shown, while somebody sees them. */
    private void count() {
        Optional<Combination> c = bench.renderer().combinationProperty().get();
        Optional<ScreenPicture> shown = bench.renderer().shownProperty().get();
        if (getScene() != null && c.isPresent() && shown.isPresent()) {
            counting.submit(
                    progress -> Levels.of(c.get().cube(), shown.get()),
                    counted -> {
                        levels = counted;
                        histogram.show(levels, linear.isSelected());
                    },
                    failure -> {},
                    (at, doing) -> {});
        }
    }

    public void setPalette(Palette palette) {
        histogram.setPalette(palette);
    }

    private SliderField tone(String id, String[] words, double[] range, Choices.Component<Tone, Double> choice) {
        return sliderField(
                id,
                words[0],
                words[1],
                range,
                choice.apply(Tone.DEFAULT),
                v -> bench.tryOut(s -> s.with(toned(s.look(), choice, v))),
                v -> bench.editSession(words[2], s -> s.with(toned(s.look(), choice, v))));
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
            brightness.show(l.tone().brightness());
            black.show(l.tone().black());
            contrast.show(l.tone().contrast());
            saturation.show(l.tone().saturation());
            grading.show(l.grading());
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

    private static void show(ComboBox<String> box, List<String> names, String value) {
        box.getItems().setAll(names);
        box.setValue(value);
    }
}
