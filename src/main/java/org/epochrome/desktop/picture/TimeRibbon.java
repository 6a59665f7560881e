package org.epochrome.desktop.picture;

import java.time.Instant;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import javafx.scene.text.TextAlignment;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.FrameEdits;
import org.epochrome.desktop.state.TimeBars;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.state.UserMessages;
import org.epochrome.desktop.style.CoalescedUpdate;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.product.Session;

/** The time ribbon: each frame a bar at its real start and end, and the epoch as a marker that can be dragged. */
public final class TimeRibbon extends Region {
    private final Workspace bench;
    private final Canvas canvas = new Canvas();
    private final Tooltip tip = new Tooltip();
    private Optional<TimeBars> bars = Optional.empty();
    private Palette palette = Palette.DARK;
    private final CoalescedUpdate renewal = new CoalescedUpdate(this::renew);
    private final CoalescedUpdate trial = new CoalescedUpdate(this::tryOut);
    private boolean dragging;
    private double dragX;

    public TimeRibbon(Workspace bench) {
        this.bench = bench;
        setId("ribbon");
        getStyleClass().add("time-ribbon");
        setFocusTraversable(true);
        setAccessibleText(Texts.of("ribbon.accessible"));
        canvas.setManaged(false);
        getChildren().add(canvas);
        Tooltip.install(this, tip);
        bench.draftProperty().addListener((o, old, now) -> renewal.ask());
        bench.timetableProperty().addListener((o, old, now) -> renewal.ask());
        bench.selectionProperty().addListener((o, old, now) -> paint());
        bench.renderer().combinationProperty().addListener((o, old, now) -> renewal.ask());
        setOnMousePressed(this::pressed);
        setOnMouseDragged(this::dragged);
        setOnMouseReleased(this::released);
        setOnMouseMoved(this::moved);
        setOnKeyPressed(this::key);
        focusedProperty().addListener((o, old, now) -> paint());
    }

    public void setPalette(Palette next) {
        palette = next;
        paint();
    }

    private void renew() {
        bars = getWidth() < 100
                ? Optional.empty()
                : TimeBars.of(
                        bench.draft(),
                        bench.timetableProperty().get(),
                        bench.renderer().combinationProperty().get(),
                        getWidth()
                                - 2 * RibbonDrawing.SIDE
                                - (bench.draft().absent().isEmpty() ? 0 : RibbonDrawing.ABSENT));
        setPrefHeight(RibbonDrawing.height(bars));
        paint();
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
        return RibbonDrawing.height(bars);
    }

    /** Where the epoch's marker stands, from the ribbon's left edge; empty without a session. */
    public Optional<Double> epochX() {
        return bench.epoch()
                .flatMap(e -> bars.map(b -> RibbonDrawing.SIDE + b.axis().x(e)));
    }

    private void paint() {
        GraphicsContext pen = canvas.getGraphicsContext2D();
        pen.setFill(palette.paper());
        pen.fillRect(0, 0, canvas.getWidth(), canvas.getHeight());
        if (bars.isEmpty()) {
            pen.setFill(palette.ink().deriveColor(0, 1, 1, 0.75));
            pen.setTextAlign(TextAlignment.CENTER);
            pen.setTextBaseline(VPos.CENTER);
            pen.fillText(Texts.of("ribbon.empty"), canvas.getWidth() / 2, canvas.getHeight() / 2);
            return;
        }
        new RibbonDrawing(pen, palette, bars.get())
                .draw(
                        bench.selectionProperty().get().frame(),
                        bench.epoch(),
                        bench.draft().absent());
        if (isFocused()) {
            pen.setStroke(palette.accent());
            pen.setLineWidth(1);
            pen.strokeRect(0.5, 0.5, canvas.getWidth() - 1, canvas.getHeight() - 1);
        }
    }

    private void pressed(MouseEvent e) {
        requestFocus();
        Optional<TimeBars.Bar> bar = bar(e);
        boolean onMarker = epochX().filter(x -> Math.abs(x - e.getX()) <= RibbonDrawing.GRIP + 1)
                .filter(x -> e.getY() < RibbonDrawing.TOP + 4 || bar.isEmpty())
                .isPresent();
        if (onMarker || (bench.epoch().isPresent() && e.getY() < RibbonDrawing.TOP - 2)) {
            dragging = true;
            dragged(e);
        } else {
            if (onAbsent(e)) {
                bench.select(Topic.FRAME);
            }
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
            dragX = e.getX();
            trial.ask();
        }
    }

    /** Where the hand is now; where it was meanwhile is of no use any more. */
    private void tryOut() {
        if (dragging) {
            at(dragX).ifPresent(epoch -> bench.tryOut(moved(epoch)));
        }
    }

    private void released(MouseEvent e) {
        if (dragging) {
            dragging = false;
            at(e.getX()).ifPresent(this::putEpoch);
        }
    }

    private Optional<Instant> at(double x) {
        return bars.map(b -> b.axis().at(x - RibbonDrawing.SIDE));
    }

    private void putEpoch(Instant epoch) {
        bench.editSession(Texts.of("step.moveEpoch"), moved(epoch));
    }

    private static UnaryOperator<Session> moved(Instant epoch) {
        return s -> s.with(s.recipe().at(Optional.of(epoch)));
    }

    private Optional<TimeBars.Bar> bar(MouseEvent e) {
        int lane = (int) Math.floor(
                (e.getY() - RibbonDrawing.TOP + RibbonDrawing.GAP / 2) / (RibbonDrawing.BAR + RibbonDrawing.GAP));
        return bars.flatMap(b -> b.at(e.getX() - RibbonDrawing.SIDE, lane));
    }

    private boolean onAbsent(MouseEvent e) {
        return !bench.draft().absent().isEmpty()
                && e.getX() > getWidth() - RibbonDrawing.ABSENT
                && e.getY() > RibbonDrawing.TOP;
    }

    private String absentTip() {
        return bench.draft().absent().stream()
                .map(a -> UserMessages.inWords(a.problem()))
                .collect(Collectors.joining("\n"));
    }

    private void moved(MouseEvent e) {
        String text = onAbsent(e) ? absentTip() : bar(e).map(TimeBars.Bar::tip).orElse(Texts.of("ribbon.tip"));
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
                bench.editSession(
                        Texts.of("step.midpoint"), s -> s.with(s.recipe().at(Optional.empty())));
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
        bench.selectedFrame().ifPresent(f -> FrameEdits.toggle(bench, f));
    }
}
