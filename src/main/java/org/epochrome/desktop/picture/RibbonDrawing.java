package org.epochrome.desktop.picture;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;
import org.epochrome.colour.Spectral;
import org.epochrome.desktop.state.TimeAxis;
import org.epochrome.desktop.state.TimeBars;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.recipe.AbsentFrame;

/** Draws the time ribbon: ticks, bars, the epoch's marker, and what is absent at the right end. */
final class RibbonDrawing {
    static final double SIDE = 16;
    static final double TOP = 26;
    static final double BAR = 26;
    static final double GAP = 4;
    static final double FOOT = 20;
    static final double GRIP = 7;
    static final int MOST_LANES = 4;
    /** Room at the right end for what is absent. */
    static final double ABSENT = 150;
    /** Letters of a name that has room there. */
    private static final int SHORT_NAME = 14;

    private static final double LEAST_LABEL = 50;
    /** Half of the width of the epoch, and the width of a date. */
    private static final double EPOCH_HALF_PX = 62;

    private static final double DATE_PX = 64;
    private static final double TICKS_PX = 90;
    /** Brightness of a bar from which black stands out better than white. */
    private static final double LIGHT_BAR = 0.42;

    private static final Color PALE_RED = Color.web("#ff9f8c");

    private final GraphicsContext pen;
    private final Palette palette;
    private final TimeBars bars;

    RibbonDrawing(GraphicsContext pen, Palette palette, TimeBars bars) {
        this.pen = pen;
        this.palette = palette;
        this.bars = bars;
        pen.setFont(Font.font(11));
    }

    /** Upper edge of a lane. */
    static double top(int lane) {
        return TOP + Math.min(lane, MOST_LANES - 1) * (BAR + GAP);
    }

    /** How many lanes of bars are drawn above each other. */
    static int lanes(Optional<TimeBars> bars) {
        return Math.min(MOST_LANES, bars.map(TimeBars::lanes).orElse(1));
    }

    /** The height that it takes. */
    static double height(Optional<TimeBars> bars) {
        return TOP + FOOT + lanes(bars) * (BAR + GAP) + 6;
    }

    void draw(int chosen, Optional<Instant> epoch, List<AbsentFrame> absent) {
        double floor = TOP + lanes(Optional.of(bars)) * (BAR + GAP);
        ticks(floor);
        dates(epoch);
        for (TimeBars.Bar bar : bars.bars()) {
            bar(bar, bar.index() == chosen);
        }
        epoch.ifPresent(at -> epoch(at, floor));
        // Over the marker's line, which would cut them.
        bars.bars().forEach(this::words);
        if (!absent.isEmpty()) {
            absent(absent, pen.getCanvas().getWidth() - ABSENT, floor);
        }
    }

    private void absent(List<AbsentFrame> absent, double x, double floor) {
        double wide = ABSENT - SIDE;
        pen.setStroke(palette.warm());
        pen.setLineWidth(1.2);
        pen.setLineDashes(4, 3);
        pen.strokeRoundRect(x + 0.5, TOP + 0.5, wide, floor - TOP - GAP, 5, 5);
        pen.setLineDashes();
        pen.setFill(palette.warm());
        pen.setTextAlign(TextAlignment.CENTER);
        pen.setTextBaseline(VPos.CENTER);
        boolean named = absent.size() == 1 && absent.get(0).name().length() <= SHORT_NAME;
        String text = named
                ? Texts.of("ribbon.missing.file", absent.get(0).name())
                : absent.size() == 1 ? Texts.of("ribbon.missing.one") : Texts.of("ribbon.missing.some", absent.size());
        pen.fillText(text, x + wide / 2, (TOP + floor - GAP) / 2, wide - 10);
    }

    private void ticks(double floor) {
        pen.setTextAlign(TextAlignment.CENTER);
        pen.setTextBaseline(VPos.TOP);
        pen.setLineWidth(1);
        double last = Double.NEGATIVE_INFINITY;
        for (Instant tick : bars.axis().ticks(TICKS_PX)) {
            double x = Math.round(SIDE + bars.axis().x(tick)) + 0.5;
            pen.setStroke(palette.faint().deriveColor(0, 1, 1, 0.5));
            pen.strokeLine(x, TOP - 4, x, floor + 3);
            if (x - last > 62) {
                pen.setFill(palette.ink().deriveColor(0, 1, 1, 0.7));
                pen.fillText(TimeBars.clock(tick), x, floor + 4);
                last = x;
            }
        }
        pen.setStroke(palette.faint());
        for (double fold : bars.axis().folds()) {
            double x = SIDE + fold;
            for (double dx : new double[] {-3, 3}) {
                pen.strokeLine(x + dx - 3, floor + 4, x + dx + 3, TOP - 6);
            }
        }
    }

    /** The date where it begins or changes, unless the epoch is written there, which has it too. */
    private void dates(Optional<Instant> epoch) {
        pen.setFill(palette.ink().deriveColor(0, 1, 1, 0.7));
        pen.setTextAlign(TextAlignment.LEFT);
        pen.setTextBaseline(VPos.TOP);
        double marker = epoch.map(at -> SIDE + bars.axis().x(at)).orElse(Double.NEGATIVE_INFINITY);
        for (TimeAxis.Day day : bars.axis().days()) {
            double x = SIDE + day.x();
            if (x + DATE_PX < marker - EPOCH_HALF_PX || x > marker + EPOCH_HALF_PX) {
                pen.fillText(day.date().toString(), x, 2);
            }
        }
    }

    private void bar(TimeBars.Bar bar, boolean chosen) {
        double x = SIDE + bar.left();
        double y = top(bar.lane());
        Color colour = colour(bar);
        pen.setFill(bar.used() ? colour : colour.deriveColor(0, 0.3, 0.6, 0.35));
        pen.fillRoundRect(x, y, bar.width(), BAR, 5, 5);
        if (bar.smeared() || bar.doubtful()) {
            pen.setFill(palette.warm());
            pen.fillRoundRect(x, y + BAR - 5, bar.width(), bar.smeared() ? 5 : 2.5, 3, 3);
        }
        if (chosen) {
            pen.setStroke(palette.ink());
            pen.setLineWidth(2);
            pen.strokeRoundRect(x - 1, y - 1, bar.width() + 2, BAR + 2, 6, 6);
        }
    }

    private void words(TimeBars.Bar bar) {
        if (bar.width() < LEAST_LABEL) {
            return;
        }
        double middle = top(bar.lane()) + BAR / 2 - 1;
        pen.setFill(bar.used() ? readable(colour(bar)) : palette.ink());
        pen.setTextBaseline(VPos.CENTER);
        pen.setTextAlign(TextAlignment.LEFT);
        pen.fillText(bar.band(), SIDE + bar.left() + 6, middle);
        if (bar.width() >= LEAST_LABEL + 6 * bar.band().length() + 10) {
            pen.setTextAlign(TextAlignment.RIGHT);
            pen.fillText(bar.turned(), SIDE + bar.left() + bar.width() - 6, middle);
        }
    }

    private Color colour(TimeBars.Bar bar) {
        double[] rgb = Spectral.colour(bar.passband());
        return palette.equals(Palette.RED)
                ? Color.color(0.28 + 0.32 * rgb[0], 0.04 + 0.1 * rgb[1], 0.03)
                : Color.color(rgb[0], rgb[1], rgb[2]).deriveColor(0, 0.62, 0.86, 1);
    }

    /** Black or nearly white, whichever stands out. */
    private Color readable(Color on) {
        double light = 0.2126 * on.getRed() + 0.7152 * on.getGreen() + 0.0722 * on.getBlue();
        return light > LIGHT_BAR ? Color.BLACK : palette.equals(Palette.RED) ? PALE_RED : Color.WHITE;
    }

    private void epoch(Instant at, double floor) {
        double x = SIDE + bars.axis().x(at);
        pen.setStroke(palette.accent());
        pen.setLineWidth(2);
        pen.strokeLine(x, TOP - 6, x, floor + 2);
        pen.setFill(palette.accent());
        pen.fillPolygon(new double[] {x - GRIP, x + GRIP, x}, new double[] {TOP - 9, TOP - 9, TOP}, 3);
        double half = EPOCH_HALF_PX;
        double middle = Math.max(SIDE + half, Math.min(pen.getCanvas().getWidth() - SIDE - half, x));
        pen.setTextAlign(TextAlignment.CENTER);
        pen.setTextBaseline(VPos.TOP);
        pen.fillText(at.toString(), middle, 2);
    }
}
