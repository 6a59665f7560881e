package org.epochrome.desktop.picture;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.Rectangle2D;
import javafx.scene.canvas.Canvas;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import org.epochrome.desktop.render.FinePart;
import org.epochrome.desktop.render.ScreenPicture;
import org.epochrome.desktop.state.LimbHandles;
import org.epochrome.desktop.state.Zoom;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.disk.Globe;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;

/**
 * The planet, large: the picture, the picture before beside a split line, and lines over both, painted in the picture's
 * coordinates.
 */
public final class PlanetView extends Region {
    /** What is shown around a globe, and around rings, equatorial radii. */
    private static final double GLOBE_MARGIN = 0.22;

    private static final double RING_MARGIN = 0.18;
    /** Half of what a close-up of the limb shows, radii. */
    private static final double CLOSE_UP = 0.12;

    private static final List<LimbHandles.Grip> CLOSE_UPS =
            List.of(LimbHandles.Grip.NORTH, LimbHandles.Grip.EAST, LimbHandles.Grip.SOUTH, LimbHandles.Grip.WEST);

    /** How much of the view a picture takes whose edges count. */
    private static final double WHOLE_PART = 0.88;
    /** Room for what is written beside and below the limb unrolled, pixels of the window on either side. */
    private static final double STRIP_SIDE = 54;

    private static final double STRIP_FOOT = 30;

    private final ShownImage picture = new ShownImage();
    private final ShownImage before = new ShownImage();
    private final ShownImage part = new ShownImage();
    private Optional<FinePart.Part> finer = Optional.empty();
    private boolean unprocessed;
    private final Canvas lines = new Canvas();
    private final Rectangle area = new Rectangle();
    private final ObjectProperty<Zoom> zoom = new SimpleObjectProperty<>(new Zoom(1, 0, 0));
    private final Set<Overlay> overlays = EnumSet.noneOf(Overlay.class);
    private Optional<ScreenPicture> shown = Optional.empty();
    private Optional<ScreenPicture> earlier = Optional.empty();
    private Optional<LimbHandles> handles = Optional.empty();
    private List<OverlayPainter.Vector> dispersion = List.of();
    private RotationSystem system = RotationSystem.SINGLE;
    private Palette palette = Palette.DARK;
    private Optional<OverlayContent> sketch = Optional.empty();
    private boolean held;
    private boolean fitted = true;
    private boolean splitting;
    private double splitAt = 0.5;
    private int closeUp = CLOSE_UPS.size() - 1;

    public PlanetView() {
        getStyleClass().add("planet-view");
        setFocusTraversable(true);
        setId("planet");
        setAccessibleText(Texts.of("picture.accessible"));
        Rectangle clip = new Rectangle();
        clip.widthProperty().bind(widthProperty());
        clip.heightProperty().bind(heightProperty());
        setClip(clip);
        before.setManaged(false);
        picture.setManaged(false);
        lines.setManaged(false);
        lines.setMouseTransparent(true);
        part.setManaged(false);
        part.setMouseTransparent(true);
        area.getStyleClass().add("area");
        area.setManaged(false);
        area.setVisible(false);
        area.setMouseTransparent(true);
        getChildren().addAll(picture, part, before, lines, area);
        zoom.addListener((o, old, now) -> place());
    }

    public ObjectProperty<Zoom> zoomProperty() {
        return zoom;
    }

    public Optional<ScreenPicture> shown() {
        return shown;
    }

    public Optional<LimbHandles> handles() {
        return handles;
    }

    Set<Overlay> overlays() {
        return overlays;
    }

    public void setOverlay(Overlay overlay, boolean on) {
        if (on) {
            overlays.add(overlay);
        } else {
            overlays.remove(overlay);
        }
        paint();
    }

    public void setPalette(Palette next) {
        palette = next;
        paint();
    }

    /** Shows a picture; one of another size or place is fitted into the view unless the user has zoomed. */
    public void show(Optional<ScreenPicture> next, RotationSystem longitudes) {
        system = longitudes;
        if (next.isPresent() && next.equals(shown)) {
            paint();
            return;
        }
        boolean other = next.isPresent() && (shown.isEmpty() || differs(shown.get(), next.get()));
        shown = next;
        picture.setImage(null);
        if (other || fitted) {
            fit();
        }
        place();
    }

    /** Shows a rectangle that is being drawn, pixels of the view. */
    public void showArea(double x, double y, double toX, double toY) {
        area.setX(Math.min(x, toX));
        area.setY(Math.min(y, toY));
        area.setWidth(Math.abs(toX - x));
        area.setHeight(Math.abs(toY - y));
        area.setVisible(true);
    }

    public void hideArea() {
        area.setVisible(false);
    }

    /** Shows a part at full resolution over the picture. */
    public void showPart(Optional<FinePart.Part> next) {
        finer = next;
        place();
    }

    /** Whether two pictures lie on so different pixels that a place in one means nothing in the other. */
    private static boolean differs(ScreenPicture a, ScreenPicture b) {
        return a.form() != b.form() || a.width() * a.factor() / 8 != b.width() * b.factor() / 8;
    }

    public void showBefore(Optional<ScreenPicture> next) {
        if (earlier.equals(next)) {
            return;
        }
        earlier = next;
        before.setImage(null);
        place();
    }

    public void showHandles(Optional<LimbHandles> next, boolean isHeld) {
        handles = next;
        held = isHeld;
        paint();
    }

    public void showDispersion(List<OverlayPainter.Vector> vectors) {
        dispersion = vectors;
        paint();
    }

    /** Whether the picture before is there to be shown beside this one. */
    private boolean splits() {
        return splitting
                && earlier.isPresent()
                && shown.filter(s -> s.form() == ScreenPicture.Form.SKY).isPresent();
    }

    public void setSplit(boolean on, boolean processing) {
        splitting = on;
        unprocessed = processing;
        place();
    }

    /** Whether the split line is within reach of a place. */
    public boolean onSplit(double x) {
        return splits() && Math.abs(x - splitAt * getWidth()) < 8;
    }

    /** Moves the split line by a part of the width. */
    public void moveSplitBy(double part) {
        moveSplit((splitAt + part) * getWidth());
    }

    public void moveSplit(double x) {
        splitAt = Math.max(0.02, Math.min(0.98, x / Math.max(1, getWidth())));
        place();
    }

    /** The disk with a margin in the middle, or the whole picture where its edges count. */
    public void fit() {
        fitted = true;
        shown.ifPresent(s -> {
            if (s.form() != ScreenPicture.Form.SKY) {
                boolean strip = s.form() == ScreenPicture.Form.STRIP;
                double wide = strip ? getWidth() - 2 * STRIP_SIDE : WHOLE_PART * getWidth();
                double high = strip ? getHeight() - 2 * STRIP_FOOT : WHOLE_PART * getHeight();
                double room =
                        Math.max(0.01, Math.min(wide / (s.width() * s.factor()), high / (s.height() * s.factor())));
                double middleX = 0.5 * (s.width() * s.factor() - 1);
                double middleY = 0.5 * (s.height() * s.factor() - 1);
                zoom.set(Zoom.centred(middleX, middleY, room, getWidth(), getHeight()));
                return;
            }
            Body body = s.aspect().body();
            double radii = body.reachRadii() + (body.rings().isPresent() ? RING_MARGIN : GLOBE_MARGIN);
            double reach = radii * s.disk().equatorialRadiusPx();
            zoom.set(Zoom.around(s.disk().x(), s.disk().y(), reach, getWidth(), getHeight()));
        });
    }

    /** A pixel of the picture on a pixel of the screen. */
    public void trueSize() {
        fitted = false;
        shown.ifPresent(
                s -> zoom.set(Zoom.centred(s.disk().x(), s.disk().y(), 1 / density(), getWidth(), getHeight())));
    }

    /** A part of the limb, large: each call the next of four, going round from north. */
    public void closeUp() {
        fitted = false;
        closeUp = (closeUp + 1) % CLOSE_UPS.size();
        shown.filter(s -> s.form() != ScreenPicture.Form.STRIP).ifPresent(s -> new LimbHandles(
                        Globe.of(s.aspect()), s.disk())
                .handles().stream()
                        .filter(h -> h.grip() == CLOSE_UPS.get(closeUp))
                        .forEach(h -> zoom.set(Zoom.around(
                                h.x(), h.y(), CLOSE_UP * s.disk().equatorialRadiusPx(), getWidth(), getHeight()))));
    }

    public void zoomBy(double factor, double x, double y) {
        fitted = false;
        zoom.set(zoom.get().by(factor, x, y));
    }

    public void moveBy(double dx, double dy) {
        fitted = false;
        zoom.set(zoom.get().movedBy(dx, dy));
    }

    @Override
    protected void layoutChildren() {
        if (fitted) {
            fit();
        }
        place();
    }

    private void place() {
        shown.ifPresent(s -> picture.place(s, zoom.get(), density()));
        part.setVisible(finer.isPresent()
                && shown.filter(s -> s.form() == ScreenPicture.Form.SKY).isPresent());
        finer.ifPresent(f -> part.place(
                f.picture(),
                zoom.get()
                        .movedBy(
                                zoom.get().scale() * f.region().left(),
                                zoom.get().scale() * f.region().top()),
                density()));
        boolean both = splits();
        before.setVisible(both);
        if (both) {
            ScreenPicture e = earlier.get();
            double edge = zoom.get().imageX(splitAt * getWidth()) + 0.5;
            double columns = Math.max(0, Math.min(e.width(), edge / e.factor()));
            before.setVisible(columns > 0);
            int times = before.place(e, zoom.get(), density());
            before.setViewport(
                    new Rectangle2D(0, 0, Math.max(1e-3, columns / times), Math.floorDiv(e.height(), times)));
            before.setFitWidth(columns * e.factor() * zoom.get().scale());
        }
        paint();
    }

    /** How many pixels of the screen one of the window's is wide. */
    private double density() {
        return getScene() == null || getScene().getWindow() == null
                ? 1
                : getScene().getWindow().getOutputScaleX();
    }

    private void paint() {
        Optional<OverlayContent> next = shown.map(s -> new OverlayContent(
                s,
                zoom.get(),
                overlays,
                system,
                handles,
                held,
                dispersion,
                palette,
                unprocessed,
                splits() ? Optional.of(splitAt * getWidth()) : Optional.empty()));
        boolean draws = next.filter(OverlayContent::draws).isPresent();
        lines.setVisible(draws);
        if (draws && (!next.equals(sketch) || lines.getWidth() != getWidth() || lines.getHeight() != getHeight())) {
            lines.setWidth(getWidth());
            lines.setHeight(getHeight());
            next.get().on(lines);
            sketch = next;
        }
    }
}
