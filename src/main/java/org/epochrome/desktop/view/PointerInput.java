package org.epochrome.desktop.view;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import javafx.scene.Cursor;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.look.PixelPicker;
import org.epochrome.desktop.panel.DiskPanel;
import org.epochrome.desktop.panel.FrameEdits;
import org.epochrome.desktop.panel.ShiftPanel;
import org.epochrome.desktop.picture.PlanetView;
import org.epochrome.desktop.state.LimbHandles;
import org.epochrome.desktop.state.Selection;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.state.Zoom;
import org.epochrome.desktop.style.Texts;
import org.epochrome.disk.Disk;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.ManualDisk;

/** What hands do on the picture: zoom, move, pull the split line, draw the limb by its handles, nudge by keys. */
final class PointerInput {
    private static final double REACH = 11;
    private static final double WHEEL = 1.0015;
    /** Part of the view's width by which a key moves the split line. */
    private static final double SPLIT_STEP = 0.02;

    private final Workspace bench;
    private final PlanetView view;
    private final ShiftPanel shift;
    private final Consumer<double[]> under;
    private final PixelPicker picker;
    private double lookedX = Double.NaN;
    private double lookedY = Double.NaN;
    private double lastX;
    private double lastY;
    private boolean splitting;
    /** Where a rectangle begins that is being drawn, pixels of the view. */
    private double[] areaFrom = {};

    private Optional<LimbHandles.Grip> grip = Optional.empty();

    /**
     * @param picker takes the next place that is clicked, if it waits for one
     * @param under hears which pixel of the picture is under the cursor; null if none
     */
    PointerInput(Workspace bench, PlanetView view, ShiftPanel shift, PixelPicker picker, Consumer<double[]> under) {
        this.picker = picker;
        this.bench = bench;
        this.view = view;
        this.shift = shift;
        this.under = under;
        view.setOnScroll(this::scrolled);
        view.setOnMousePressed(this::pressed);
        view.setOnMouseDragged(this::dragged);
        view.setOnMouseReleased(this::released);
        view.setOnMouseMoved(this::moved);
        view.setOnMouseExited(e -> under.accept(null));
        view.setOnKeyPressed(this::key);
        view.zoomProperty().addListener((o, old, now) -> look());
        view.setOnZoom(e -> view.zoomBy(e.getZoomFactor(), e.getX(), e.getY()));
    }

    private void scrolled(ScrollEvent e) {
        if (e.getDeltaY() != 0 && !e.isInertia()) {
            view.zoomBy(Math.pow(WHEEL, e.getDeltaY()), e.getX(), e.getY());
        }
        e.consume();
    }

    private void pressed(MouseEvent e) {
        view.requestFocus();
        lastX = e.getX();
        lastY = e.getY();
        if (picker.isWaiting()) {
            Zoom z = view.zoomProperty().get();
            picker.picked(new double[] {z.imageX(e.getX()), z.imageY(e.getY())});
            return;
        }
        areaFrom = picker.isWaitingForArea() ? new double[] {e.getX(), e.getY()} : new double[0];
        grip = grip(e);
        splitting = grip.isEmpty() && view.onSplit(e.getX());
        if (e.getButton() == MouseButton.PRIMARY && e.getClickCount() == 2 && grip.isEmpty()) {
            view.fit();
        }
    }

    private Optional<LimbHandles.Grip> grip(MouseEvent e) {
        Zoom z = view.zoomProperty().get();
        return view.handles().flatMap(h -> h.near(z.imageX(e.getX()), z.imageY(e.getY()), REACH / z.scale()));
    }

    private void dragged(MouseEvent e) {
        Zoom z = view.zoomProperty().get();
        if (areaFrom.length > 0) {
            view.showArea(areaFrom[0], areaFrom[1], e.getX(), e.getY());
        } else if (grip.isPresent()) {
            LimbHandles handles = view.handles().orElseThrow();
            Disk drawn = handles.drawn(grip.get(), z.imageX(e.getX()), z.imageY(e.getY()));
            view.showHandles(Optional.of(new LimbHandles(handles.globe(), drawn)), true);
        } else if (splitting) {
            view.moveSplit(e.getX());
        } else {
            view.moveBy(e.getX() - lastX, e.getY() - lastY);
        }
        lastX = e.getX();
        lastY = e.getY();
        moved(e);
    }

    private void released(MouseEvent e) {
        if (areaFrom.length > 0) {
            Zoom z = view.zoomProperty().get();
            view.hideArea();
            picker.drawn(
                    new double[] {z.imageX(areaFrom[0]), z.imageY(areaFrom[1])},
                    new double[] {z.imageX(e.getX()), z.imageY(e.getY())});
            areaFrom = new double[0];
        }
        if (grip.isPresent() && view.handles().isPresent()) {
            hold(view.handles().get().disk(), grip.get() == LimbHandles.Grip.POLE);
        }
        grip = Optional.empty();
        splitting = false;
    }

    private void hold(Disk d, boolean turned) {
        held(d, turned).ifPresent(change -> bench.editSession(Texts.of("step.drawLimb"), change));
    }

    private Optional<UnaryOperator<Session>> held(Disk d, boolean turned) {
        return bench.selectedFrame().map(f -> {
            OptionalDouble north = turned ? OptionalDouble.of(DiskPanel.hundredth(d.northAngleDeg())) : heldNorth(f);
            ManualDisk held = new ManualDisk(
                    DiskPanel.hundredth(d.x()),
                    DiskPanel.hundredth(d.y()),
                    DiskPanel.hundredth(d.equatorialRadiusPx()),
                    north);
            return s -> FrameEdits.held(s, f, Optional.of(held));
        });
    }

    private OptionalDouble heldNorth(DatedFrame f) {
        return bench.draft()
                .recipe()
                .map(r -> r.frames().disks().get(f.head().file()))
                .map(ManualDisk::northAngleDeg)
                .orElse(OptionalDouble.empty());
    }

    private void moved(MouseEvent e) {
        Zoom z = view.zoomProperty().get();
        under.accept(new double[] {z.imageX(e.getX()), z.imageY(e.getY())});
        lookedX = e.getX();
        lookedY = e.getY();
        look();
        view.setCursor(
                picker.isWaiting() || picker.isWaitingForArea()
                        ? Cursor.CROSSHAIR
                        : grip(e).isPresent()
                                ? Cursor.HAND
                                : view.onSplit(e.getX()) ? Cursor.H_RESIZE : Cursor.DEFAULT);
    }

    /** Tells what is visible, and where the user looked last. */
    private void look() {
        Zoom z = view.zoomProperty().get();
        bench.renderer()
                .fine()
                .look(
                        z.imageX(0),
                        z.imageY(0),
                        z.imageX(view.getWidth()),
                        z.imageY(view.getHeight()),
                        z.imageX(Double.isNaN(lookedX) ? view.getWidth() / 2 : lookedX),
                        z.imageY(Double.isNaN(lookedY) ? view.getHeight() / 2 : lookedY));
    }

    private void key(KeyEvent e) {
        if (e.isShortcutDown() || e.isAltDown()) {
            return;
        }
        double step = e.isShiftDown() ? 10 * ShiftPanel.STEP_PX : ShiftPanel.STEP_PX;
        switch (e.getCode()) {
            case LEFT -> nudge(-step, 0);
            case RIGHT -> nudge(step, 0);
            case UP -> nudge(0, -step);
            case DOWN -> nudge(0, step);
            case COMMA -> view.moveSplitBy(-SPLIT_STEP);
            case PERIOD -> view.moveSplitBy(SPLIT_STEP);
            case PLUS, ADD, EQUALS -> view.zoomBy(1.25, view.getWidth() / 2, view.getHeight() / 2);
            case MINUS, SUBTRACT -> view.zoomBy(0.8, view.getWidth() / 2, view.getHeight() / 2);
            default -> {
                return;
            }
        }
        e.consume();
    }

    /** Moves what is chosen: a band's picture, a held disk, or else the view. */
    private void nudge(double dx, double dy) {
        Selection selection = bench.selectionProperty().get();
        if (selection.topic() == Topic.SHIFT) {
            shift.nudgeBy(dx, dy);
        } else if (selection.topic() == Topic.DISK && view.handles().isPresent()) {
            held(view.handles().get().disk().movedBy(dx, dy), false)
                    .ifPresent(change -> bench.nudge(Texts.of("step.moveLimb"), change));
        } else {
            view.moveBy(-800 * dx, -800 * dy);
        }
    }
}
