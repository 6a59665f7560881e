package org.epochrome.desktop.look;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;
import javafx.collections.FXCollections;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.epochrome.colour.Gains;
import org.epochrome.colour.finish.ChannelOffsets;
import org.epochrome.colour.finish.Grading;
import org.epochrome.colour.finish.LevelPoints;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.ToneCurve;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.panel.SliderField;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.product.Session;

/** Black, middle and white of a channel or of all, its gain and offset, and the tone curve. */
final class GradingForm extends VBox {
    private static final double[] WHOLE = {0, 1};

    private final ComboBox<String> channel = new ComboBox<>();
    private final List<Entry> entries = new ArrayList<>();
    private final List<SliderField> ofOneChannel = new ArrayList<>();
    private final SliderMaker maker;
    private Grading shown = Grading.NONE;

    /** Makes a slider whose values change a session. */
    interface SliderMaker {
        SliderField make(
                String id,
                String name,
                String teaches,
                double[] range,
                double usual,
                BiFunction<Session, Double, Session> change);
    }

    private record Entry(SliderField field, ToDoubleFunction<Grading> get) {}

    /** @param changed takes another look at once */
    GradingForm(SliderMaker maker, java.util.function.Consumer<Grading> changed) {
        super(9);
        this.maker = maker;
        channel.setId("channel");
        channel.setTooltip(new Tooltip(Texts.of("panel.grading.channel.tip")));
        channel.setAccessibleText(Texts.of("panel.grading.channel"));
        channel.setItems(FXCollections.observableArrayList(Grading.ALL, "red", "green", "blue"));
        channel.setConverter(new StringConverter<>() {
            @Override
            public String toString(String name) {
                return name == null ? "" : title(name);
            }

            @Override
            public String fromString(String text) {
                throw new UnsupportedOperationException();
            }
        });
        channel.setValue(Grading.ALL);
        channel.setMaxWidth(Double.MAX_VALUE);
        channel.valueProperty().addListener((o, old, now) -> show(shown));
        GridPane levels = Panel.grid();
        Panel.row(levels, Texts.of("panel.grading.channel"), channel);
        points(levels);
        channelRows(levels);
        GridPane curve = Panel.grid();
        curve(curve);
        Button reset = new Button(Texts.of("panel.grading.reset"));
        reset.setId("grading-reset");
        reset.setTooltip(new Tooltip(Texts.of("panel.grading.reset.tip")));
        reset.setOnAction(e -> changed.accept(Grading.NONE));
        getChildren()
                .addAll(
                        Panel.heading(Texts.of("panel.grading.levels")),
                        levels,
                        Panel.heading(Texts.of("panel.grading.curve")),
                        curve,
                        reset);
    }

    private static String title(String channel) {
        return switch (channel) {
            case "red" -> Texts.of("panel.colour.red");
            case "green" -> Texts.of("panel.colour.green");
            case "blue" -> Texts.of("panel.colour.blue");
            default -> Texts.of("panel.grading.all");
        };
    }

    private String name() {
        return channel.getValue();
    }

    private int index() {
        return Grading.CHANNELS.indexOf(name());
    }

    private SliderField add(
            GridPane grid,
            String id,
            String[] words,
            double[] range,
            double usual,
            ToDoubleFunction<Grading> get,
            BiFunction<Grading, Double, Grading> set) {
        SliderField field = maker.make(id, words[0], words[1], range, usual, (s, v) -> {
            Look look = s.look();
            return s.with(look.with(Look::grading, set.apply(look.grading(), v)));
        });
        entries.add(new Entry(field, get));
        Panel.row(grid, words[0], field);
        return field;
    }

    private void points(GridPane grid) {
        add(
                grid,
                "level-black",
                new String[] {Texts.of("panel.grading.black"), Texts.of("panel.grading.black.tip")},
                WHOLE,
                0,
                g -> g.levelsOf(name()).black(),
                (g, v) -> {
                    LevelPoints p = g.levelsOf(name());
                    return g.with(name(), new LevelPoints(Math.min(v, p.white() - 0.01), p.mid(), p.white()));
                });
        add(
                grid,
                "level-mid",
                new String[] {Texts.of("panel.grading.mid"), Texts.of("panel.grading.mid.tip")},
                new double[] {0.05, 0.95},
                0.5,
                g -> g.levelsOf(name()).mid(),
                (g, v) -> {
                    LevelPoints p = g.levelsOf(name());
                    return g.with(name(), new LevelPoints(p.black(), v, p.white()));
                });
        add(
                grid,
                "level-white",
                new String[] {Texts.of("panel.grading.white"), Texts.of("panel.grading.white.tip")},
                WHOLE,
                1,
                g -> g.levelsOf(name()).white(),
                (g, v) -> {
                    LevelPoints p = g.levelsOf(name());
                    return g.with(name(), new LevelPoints(p.black(), p.mid(), Math.max(v, p.black() + 0.01)));
                });
    }

    private void channelRows(GridPane grid) {
        ofOneChannel.add(add(
                grid,
                "channel-gain",
                new String[] {Texts.of("panel.grading.gain"), Texts.of("panel.grading.gain.tip")},
                new double[] {0.2, 3},
                1,
                g -> index() < 0 ? 1 : values(g.gains())[index()],
                (g, v) -> {
                    double[] all = values(g.gains());
                    all[Math.max(0, index())] = v;
                    return index() < 0 ? g : g.with(Grading::gains, new Gains(all[0], all[1], all[2]));
                }));
        ofOneChannel.add(add(
                grid,
                "channel-offset",
                new String[] {Texts.of("panel.grading.offset"), Texts.of("panel.grading.offset.tip")},
                new double[] {-0.2, 0.2},
                0,
                g -> index() < 0 ? 0 : values(g.offsets())[index()],
                (g, v) -> {
                    double[] all = values(g.offsets());
                    all[Math.max(0, index())] = v;
                    return index() < 0 ? g : g.with(Grading::offsets, new ChannelOffsets(all[0], all[1], all[2]));
                }));
    }

    private static double[] values(Gains g) {
        return new double[] {g.red(), g.green(), g.blue()};
    }

    private static double[] values(ChannelOffsets o) {
        return new double[] {o.red(), o.green(), o.blue()};
    }

    private void curve(GridPane grid) {
        add(
                grid,
                "curve-shadows",
                new String[] {Texts.of("panel.grading.shadows"), Texts.of("panel.grading.shadows.tip")},
                WHOLE,
                0.25,
                g -> g.curve().quarter(),
                (g, v) -> {
                    ToneCurve c = g.curve();
                    return g.with(Grading::curve, new ToneCurve(Math.min(v, c.half()), c.half(), c.threeQuarters()));
                });
        add(
                grid,
                "curve-midtones",
                new String[] {Texts.of("panel.grading.midtones"), Texts.of("panel.grading.midtones.tip")},
                WHOLE,
                0.5,
                g -> g.curve().half(),
                (g, v) -> {
                    ToneCurve c = g.curve();
                    double half = Math.max(c.quarter(), Math.min(c.threeQuarters(), v));
                    return g.with(Grading::curve, new ToneCurve(c.quarter(), half, c.threeQuarters()));
                });
        add(
                grid,
                "curve-highlights",
                new String[] {Texts.of("panel.grading.highlights"), Texts.of("panel.grading.highlights.tip")},
                WHOLE,
                0.75,
                g -> g.curve().threeQuarters(),
                (g, v) -> {
                    ToneCurve c = g.curve();
                    return g.with(Grading::curve, new ToneCurve(c.quarter(), c.half(), Math.max(v, c.half())));
                });
    }

    void show(Grading grading) {
        shown = grading;
        entries.forEach(e -> e.field.show(e.get.applyAsDouble(grading)));
        ofOneChannel.forEach(f -> f.setDisable(index() < 0));
    }
}
