package org.epochrome.desktop.view;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.Rectangle2D;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import org.epochrome.desktop.bench.LimbHandles;
import org.epochrome.desktop.bench.Shown;
import org.epochrome.desktop.bench.Zoom;
import org.epochrome.ephemeris.RotationSystem;

/**
 * The planet, large: the picture, the picture before beside a split line, and lines over both, painted in the picture's
 * coordinates.
 */
final class PlanetView extends Region {
    private static final double FIT_REACH = 1.22;
    private static final double RINGED_REACH = 2.45;
    /** Half of what a close-up of the limb shows, radii. */
    private static final double CLOSE_UP = 0.12;
    /** From this magnification on pixels are shown as squares. */
    private static final double SQUARES = 3;

    private final ImageView picture = new ImageView();
    private final ImageView before = new ImageView();
    private final Canvas lines = new Canvas();
    private final ObjectProperty<Zoom> zoom = new SimpleObjectProperty<>(new Zoom(1, 0, 0));
    private final Set<Overlay> overlays = EnumSet.noneOf(Overlay.class);
    private Optional<Shown> shown = Optional.empty();
    private Optional<Shown> earlier = Optional.empty();
    private Optional<LimbHandles> handles = Optional.empty();
    private List<Pencil.Vector> dispersion = List.of();
    private RotationSystem system = RotationSystem.SINGLE;
    private Palette palette = Palette.DARK;
    private boolean held;
    private boolean fitted = true;
    private boolean splitting;
    private double splitAt = 0.5;
    private int closeUp = 3;

    PlanetView() {
        getStyleClass().add("planet-view");
        setFocusTraversable(true);
        setId("planet");
        setAccessibleText("The planet; scroll to zoom, drag to move, F fits, 1 shows true pixels");
        Rectangle clip = new Rectangle();
        clip.widthProperty().bind(widthProperty());
        clip.heightProperty().bind(heightProperty());
        setClip(clip);
        before.setManaged(false);
        picture.setManaged(false);
        lines.setManaged(false);
        lines.setMouseTransparent(true);
        getChildren().addAll(picture, before, lines);
        zoom.addListener((o, old, now) -> place());
    }

    ObjectProperty<Zoom> zoomProperty() {
        return zoom;
    }

    Optional<Shown> shown() {
        return shown;
    }

    Optional<LimbHandles> handles() {
        return handles;
    }

    Set<Overlay> overlays() {
        return overlays;
    }

    void setOverlay(Overlay overlay, boolean on) {
        if (on) {
            overlays.add(overlay);
        } else {
            overlays.remove(overlay);
        }
        paint();
    }

    void setPalette(Palette next) {
        palette = next;
        paint();
    }

    /** Shows a picture; one of another size or place is fitted into the view unless the user has zoomed. */
    void show(Optional<Shown> next, RotationSystem longitudes) {
        system = longitudes;
        boolean other = next.isPresent()
                && (shown.isEmpty()
                        || shown.get().width() * shown.get().factor() / 8
                                != next.get().width() * next.get().factor() / 8);
        shown = next;
        picture.setImage(next.map(PlanetView::image).orElse(null));
        if (other || fitted) {
            fit();
        }
        place();
    }

    void showBefore(Optional<Shown> next) {
        earlier = next;
        before.setImage(next.map(PlanetView::image).orElse(null));
        place();
    }

    void showHandles(Optional<LimbHandles> next, boolean isHeld) {
        handles = next;
        held = isHeld;
        paint();
    }

    void showDispersion(List<Pencil.Vector> vectors) {
        dispersion = vectors;
        paint();
    }

    private static WritableImage image(Shown s) {
        return new WritableImage(
                new PixelBuffer<>(s.width(), s.height(), s.argb(), PixelFormat.getIntArgbPreInstance()));
    }

    boolean splits() {
        return splitting;
    }

    void setSplit(boolean on) {
        splitting = on;
        place();
    }

    /** Whether the split line is within reach of a place. */
    boolean onSplit(double x) {
        return splitting && Math.abs(x - splitAt * getWidth()) < 8;
    }

    void moveSplit(double x) {
        splitAt = Math.max(0.02, Math.min(0.98, x / Math.max(1, getWidth())));
        place();
    }

    /** The disk with a margin in the middle. */
    void fit() {
        fitted = true;
        shown.ifPresent(s -> {
            boolean ringed = s.aspect().body() == org.epochrome.ephemeris.Body.SATURN;
            double reach = (ringed ? RINGED_REACH : FIT_REACH) * s.disk().equatorialRadiusPx();
            zoom.set(Zoom.around(s.disk().x(), s.disk().y(), reach, getWidth(), getHeight()));
        });
    }

    /** A pixel of the picture on a pixel of the screen. */
    void trueSize() {
        fitted = false;
        double dense = getScene() == null || getScene().getWindow() == null
                ? 1
                : getScene().getWindow().getOutputScaleX();
        shown.ifPresent(s -> zoom.set(Zoom.centred(s.disk().x(), s.disk().y(), 1 / dense, getWidth(), getHeight())));
    }

    /** A part of the limb, large: each call the next of four, going round from north. */
    void closeUp() {
        fitted = false;
        closeUp = (closeUp + 1) % 4;
        shown.ifPresent(s -> {
            double angle = Math.toRadians(s.disk().northAngleDeg() + 90 * closeUp);
            double radius = s.disk().equatorialRadiusPx();
            double x = s.disk().x() - radius * Math.sin(angle);
            double y = s.disk().y() - radius * Math.cos(angle);
            zoom.set(Zoom.around(x, y, CLOSE_UP * radius, getWidth(), getHeight()));
        });
    }

    void zoomBy(double factor, double x, double y) {
        fitted = false;
        zoom.set(zoom.get().by(factor, x, y));
    }

    void moveBy(double dx, double dy) {
        fitted = false;
        zoom.set(zoom.get().movedBy(dx, dy));
    }

    @Override
    protected void layoutChildren() {
        lines.setWidth(getWidth());
        lines.setHeight(getHeight());
        if (fitted) {
            fit();
        }
        place();
    }

    private void place() {
        shown.ifPresent(s -> place(picture, s));
        boolean both = splitting && earlier.isPresent() && shown.isPresent();
        before.setVisible(both);
        if (both) {
            Shown e = earlier.get();
            double edge = zoom.get().imageX(splitAt * getWidth()) + 0.5;
            double columns = Math.max(0, Math.min(e.width(), edge / e.factor()));
            before.setVisible(columns > 0);
            before.setViewport(new Rectangle2D(0, 0, Math.max(1e-3, columns), e.height()));
            place(before, e);
            before.setFitWidth(columns * e.factor() * zoom.get().scale());
        }
        paint();
    }

    private void place(ImageView view, Shown s) {
        Zoom z = zoom.get();
        view.setX(z.left());
        view.setY(z.top());
        view.setFitWidth(z.scale() * s.width() * s.factor());
        view.setFitHeight(z.scale() * s.height() * s.factor());
        view.setSmooth(z.scale() < SQUARES || s.factor() > 1);
    }

    private void paint() {
        var pen = lines.getGraphicsContext2D();
        pen.clearRect(0, 0, lines.getWidth(), lines.getHeight());
        shown.ifPresent(s -> {
            Pencil pencil = new Pencil(pen, zoom.get(), palette);
            handles.ifPresentOrElse(
                    h -> pencil.handles(h, held),
                    () -> pencil.draw(overlays, s.aspect(), s.disk(), system, dispersion));
        });
        if (splitting && earlier.isPresent()) {
            pencilSplit(pen);
        }
    }

    private void pencilSplit(javafx.scene.canvas.GraphicsContext pen) {
        double x = Math.round(splitAt * getWidth()) + 0.5;
        pen.setStroke(palette.accent());
        pen.setLineWidth(1);
        pen.strokeLine(x, 0, x, getHeight());
        pen.setFill(palette.accent());
        pen.fillOval(x - 5, getHeight() / 2 - 5, 10, 10);
        pen.setTextBaseline(javafx.geometry.VPos.TOP);
        pen.setTextAlign(javafx.scene.text.TextAlignment.RIGHT);
        pen.fillText("stacked plainly", x - 10, 54);
        pen.setTextAlign(javafx.scene.text.TextAlignment.LEFT);
        pen.fillText("at the epoch", x + 10, 54);
    }
}
