package org.epochrome.desktop.view;

import java.time.Instant;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;
import org.epochrome.colour.Spectral;
import org.epochrome.desktop.bench.Bars;
import org.epochrome.desktop.bench.Bench;
import org.epochrome.session.Session;

/** The time ribbon: each frame a bar at its real start and end, and the epoch as a marker that can be dragged. */
final class TimeRibbon extends Region {
    private static final double SIDE = 16;
    private static final double TOP = 26;
    private static final double BAR = 26;
    private static final double GAP = 4;
    private static final double FOOT = 20;
    private static final double LEAST_LABEL = 50;
    private static final double TICKS_PX = 90;
    private static final int MOST_LANES = 4;
    private static final double GRIP = 7;
    /** Brightness of a bar from which black stands out better than white. */
    private static final double LIGHT_BAR = 0.42;

    private static final Color PALE_RED = Color.web("#ffc9bd");

    private final Bench bench;
    private final Canvas canvas = new Canvas();
    private final Tooltip tip = new Tooltip();
    private Optional<Bars> bars = Optional.empty();
    private Palette palette = Palette.DARK;
    private boolean dragging;

    TimeRibbon(Bench bench) {
        this.bench = bench;
        setId("ribbon");
        getStyleClass().add("time-ribbon");
        setFocusTraversable(true);
        setAccessibleText("Time ribbon: arrow keys choose a frame, Ctrl with arrow keys moves the epoch by a second,"
                + " with Shift by ten, X leaves a frame out or takes it in, M puts the epoch midway");
        canvas.setManaged(false);
        getChildren().add(canvas);
        Tooltip.install(this, tip);
        bench.draftProperty().addListener((o, old, now) -> renew());
        bench.timetableProperty().addListener((o, old, now) -> renew());
        bench.selectionProperty().addListener((o, old, now) -> paint());
        bench.studio().combinationProperty().addListener((o, old, now) -> renew());
        setOnMousePressed(this::pressed);
        setOnMouseDragged(this::dragged);
        setOnMouseReleased(this::released);
        setOnMouseMoved(this::moved);
        setOnKeyPressed(this::key);
        focusedProperty().addListener((o, old, now) -> paint());
    }

    void setPalette(Palette next) {
        palette = next;
        paint();
    }

    private void renew() {
        bars = getWidth() < 100
                ? Optional.empty()
                : Bars.of(
                        bench.draft(),
                        bench.timetableProperty().get(),
                        bench.studio().combinationProperty().get(),
                        getWidth() - 2 * SIDE);
        setPrefHeight(TOP + FOOT + lanes() * (BAR + GAP) + 6);
        paint();
    }

    private int lanes() {
        return Math.min(MOST_LANES, bars.map(Bars::lanes).orElse(1));
    }

    @Override
    protected void layoutChildren() {
        if (canvas.getWidth() != getWidth() || canvas.getHeight() != getHeight()) {
            canvas.setWidth(getWidth());
            canvas.setHeight(getHeight());
            renew();
        }
    }

    @Override
    protected double computePrefHeight(double width) {
        return TOP + FOOT + lanes() * (BAR + GAP) + 6;
    }

    /** Where the epoch's marker stands, from the ribbon's left edge; empty without a session. */
    Optional<Double> epochX() {
        return bench.epoch().flatMap(e -> bars.map(b -> SIDE + b.axis().x(e)));
    }

    private void paint() {
        GraphicsContext pen = canvas.getGraphicsContext2D();
        pen.setFill(palette.paper());
        pen.fillRect(0, 0, canvas.getWidth(), canvas.getHeight());
        if (bars.isEmpty()) {
            pen.setFill(palette.ink().deriveColor(0, 1, 1, 0.6));
            pen.setTextAlign(TextAlignment.CENTER);
            pen.setTextBaseline(VPos.CENTER);
            pen.fillText("Recordings will stand here at their times", canvas.getWidth() / 2, canvas.getHeight() / 2);
            return;
        }
        Bars all = bars.get();
        double floor = TOP + lanes() * (BAR + GAP);
        pen.setFont(Font.font(11));
        paintTicks(pen, all, floor);
        for (Bars.Bar bar : all.bars()) {
            paintBar(pen, bar);
        }
        epochX().ifPresent(x -> paintEpoch(pen, x, floor));
        if (isFocused()) {
            pen.setStroke(palette.accent());
            pen.setLineWidth(1);
            pen.strokeRect(0.5, 0.5, canvas.getWidth() - 1, canvas.getHeight() - 1);
        }
    }

    private void paintTicks(GraphicsContext pen, Bars all, double floor) {
        pen.setTextAlign(TextAlignment.CENTER);
        pen.setTextBaseline(VPos.TOP);
        pen.setLineWidth(1);
        double last = Double.NEGATIVE_INFINITY;
        for (Instant tick : all.axis().ticks(TICKS_PX)) {
            double x = Math.round(SIDE + all.axis().x(tick)) + 0.5;
            pen.setStroke(palette.faint().deriveColor(0, 1, 1, 0.5));
            pen.strokeLine(x, TOP - 4, x, floor + 3);
            if (x - last > 62) {
                pen.setFill(palette.ink().deriveColor(0, 1, 1, 0.7));
                pen.fillText(Bars.clock(tick), x, floor + 4);
                last = x;
            }
        }
        pen.setStroke(palette.faint());
        for (double fold : all.axis().folds()) {
            double x = SIDE + fold;
            for (double dx : new double[] {-3, 3}) {
                pen.strokeLine(x + dx - 3, floor + 4, x + dx + 3, TOP - 6);
            }
        }
    }

    private double top(Bars.Bar bar) {
        return TOP + Math.min(bar.lane(), MOST_LANES - 1) * (BAR + GAP);
    }

    private void paintBar(GraphicsContext pen, Bars.Bar bar) {
        double x = SIDE + bar.left();
        double y = top(bar);
        double[] rgb = Spectral.colour(bar.passband());
        boolean night = palette.equals(Palette.RED);
        Color colour = night
                ? Color.color(0.35 + 0.4 * rgb[0], 0.05 + 0.1 * rgb[1], 0.04)
                : Color.color(rgb[0], rgb[1], rgb[2]).deriveColor(0, 0.62, 0.86, 1);
        pen.setFill(bar.used() ? colour : colour.deriveColor(0, 0.3, 0.6, 0.35));
        pen.fillRoundRect(x, y, bar.width(), BAR, 5, 5);
        if (bar.smeared() || bar.doubtful()) {
            pen.setFill(palette.warm());
            pen.fillRoundRect(x, y + BAR - 5, bar.width(), bar.smeared() ? 5 : 2.5, 3, 3);
        }
        if (bar.width() >= LEAST_LABEL) {
            pen.setFill(bar.used() ? readable(colour) : palette.ink());
            pen.setTextBaseline(VPos.CENTER);
            pen.setTextAlign(TextAlignment.LEFT);
            pen.fillText(bar.band(), x + 6, y + BAR / 2 - 1);
            if (bar.width() >= LEAST_LABEL + 6 * bar.band().length() + 10) {
                pen.setTextAlign(TextAlignment.RIGHT);
                pen.fillText(bar.turned(), x + bar.width() - 6, y + BAR / 2 - 1);
            }
        }
        if (bar.index() == bench.selectionProperty().get().frame()) {
            pen.setStroke(palette.ink());
            pen.setLineWidth(2);
            pen.strokeRoundRect(x - 1, y - 1, bar.width() + 2, BAR + 2, 6, 6);
        }
    }

    /** Black or nearly white, whichever stands out. */
    private Color readable(Color on) {
        double light = 0.2126 * on.getRed() + 0.7152 * on.getGreen() + 0.0722 * on.getBlue();
        return light > LIGHT_BAR ? Color.BLACK : palette.equals(Palette.RED) ? PALE_RED : Color.WHITE;
    }

    private void paintEpoch(GraphicsContext pen, double x, double floor) {
        pen.setStroke(palette.accent());
        pen.setLineWidth(2);
        pen.strokeLine(x, TOP - 6, x, floor + 2);
        pen.setFill(palette.accent());
        pen.fillPolygon(new double[] {x - GRIP, x + GRIP, x}, new double[] {TOP - 9, TOP - 9, TOP}, 3);
        String text = bench.epoch().map(Instant::toString).orElse("");
        double half = 62;
        double middle = Math.max(SIDE + half, Math.min(canvas.getWidth() - SIDE - half, x));
        pen.setTextAlign(TextAlignment.CENTER);
        pen.setTextBaseline(VPos.TOP);
        pen.fillText(text, middle, 2);
    }

    private void pressed(MouseEvent e) {
        requestFocus();
        Optional<Bars.Bar> bar = bar(e);
        boolean onMarker = epochX().filter(x -> Math.abs(x - e.getX()) <= GRIP + 1)
                .filter(x -> e.getY() < TOP + 4 || bar.isEmpty())
                .isPresent();
        if (onMarker || (bench.epoch().isPresent() && e.getY() < TOP - 2)) {
            dragging = true;
            dragged(e);
        } else {
            bar.ifPresent(b -> {
                bench.selectFrame(b.index());
                if (e.getClickCount() == 2) {
                    toggle();
                }
            });
        }
    }

    private void dragged(MouseEvent e) {
        if (dragging) {
            at(e).ifPresent(epoch -> bench.tryOut(moved(epoch)));
        }
    }

    private void released(MouseEvent e) {
        if (dragging) {
            dragging = false;
            at(e).ifPresent(this::putEpoch);
        }
    }

    private Optional<Instant> at(MouseEvent e) {
        return bars.map(b -> b.axis().at(e.getX() - SIDE));
    }

    private void putEpoch(Instant epoch) {
        bench.editSession("move the epoch", moved(epoch));
    }

    private static UnaryOperator<Session> moved(Instant epoch) {
        return s -> s.with(s.recipe().at(Optional.of(epoch)));
    }

    private Optional<Bars.Bar> bar(MouseEvent e) {
        int lane = (int) Math.floor((e.getY() - TOP + GAP / 2) / (BAR + GAP));
        return bars.flatMap(b -> b.at(e.getX() - SIDE, lane));
    }

    private void moved(MouseEvent e) {
        String text = bar(e).map(Bars.Bar::tip)
                .orElse("Drag the marker, or along the top, to move the epoch."
                        + " Double-click a bar to leave it out or take it in.");
        if (!text.equals(tip.getText())) {
            tip.setText(text);
        }
    }

    private void key(KeyEvent e) {
        int step = e.isShiftDown() ? 10 : 1;
        int frame = bench.selectionProperty().get().frame();
        int last = bench.draft().frames().size() - 1;
        boolean moves = e.isShortcutDown();
        switch (e.getCode()) {
            case LEFT -> either(moves, -step, Math.max(0, frame - 1));
            case RIGHT -> either(moves, step, Math.min(last, frame + 1));
            case X -> toggle();
            case M ->
                bench.editSession("put the epoch midway", s -> s.with(s.recipe().at(Optional.empty())));
            default -> {
                return;
            }
        }
        e.consume();
    }

    private void either(boolean moves, int seconds, int frame) {
        if (moves) {
            bench.epoch().ifPresent(at -> putEpoch(at.plusSeconds(seconds)));
        } else if (frame >= 0) {
            bench.selectFrame(frame);
        }
    }

    private void toggle() {
        bench.selectedFrame().ifPresent(f -> FrameChoices.toggle(bench, f));
    }
}
