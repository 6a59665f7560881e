package org.epochrome.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.effect.BlendMode;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.util.Duration;
import org.epochrome.colour.finish.Look;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.DiskPanel;
import org.epochrome.desktop.picture.OverlayPainter;
import org.epochrome.desktop.picture.PlanetView;
import org.epochrome.desktop.render.ComparedPicture;
import org.epochrome.desktop.render.Display;
import org.epochrome.desktop.render.ScreenPicture;
import org.epochrome.desktop.state.LimbHandles;
import org.epochrome.desktop.state.Topic;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Exposure;

/** The middle of the window: the picture of the epoch, or, while its disk is looked at, the chosen frame as it was shot. */
final class Viewer extends StackPane {
    private static final List<Display> BANDS = List.of(Display.RED, Display.GREEN, Display.BLUE);
    private static final Duration STILL = Duration.millis(80);
    private static final Duration BLINK = Duration.millis(700);

    private final Workspace bench;
    private final PlanetView view = new PlanetView();
    private final Timeline blink = new Timeline(new KeyFrame(BLINK, e -> next()));
    /** Makes the picture red too, where the theme is. */
    private final Region shade = new Region();

    private Optional<DatedFrame> frameShown = Optional.empty();
    private final Timeline turning = new Timeline(new KeyFrame(STILL, e -> nextStill()));
    private List<ScreenPicture> stills = List.of();
    private Optional<Look> turnedWith = Optional.empty();
    private int still;
    private final BooleanProperty preview = new SimpleBooleanProperty();
    private final Label old = new Label(Texts.of("picture.old"));

    Viewer(Workspace bench) {
        this.bench = bench;
        getStyleClass().add("viewer");
        shade.getStyleClass().add("red-shade");
        shade.setBlendMode(BlendMode.MULTIPLY);
        shade.setMouseTransparent(true);
        shade.setVisible(false);
        old.setId("picture-old");
        old.getStyleClass().add("picture-old");
        old.visibleProperty().bind(bench.renderer().outdatedProperty());
        old.managedProperty().bind(old.visibleProperty());
        old.setWrapText(true);
        old.setMouseTransparent(true);
        setAlignment(old, Pos.TOP_CENTER);
        getChildren().addAll(view, shade, old);
        preview.addListener((o, was, now) -> renew());
        blink.setCycleCount(Timeline.INDEFINITE);
        bench.renderer().shownProperty().addListener((o, old, now) -> renew());
        bench.renderer().beforeProperty().addListener((o, old, now) -> view.showBefore(now));
        bench.renderer().combinationProperty().addListener((o, old, now) -> renew());
        bench.renderer().fine().partProperty().addListener((o, old, now) -> view.showPart(now));
        turning.setCycleCount(Timeline.INDEFINITE);
        bench.renderer().displayProperty().addListener((o, old, now) -> {
            frameShown = Optional.empty();
            turning.stop();
            stills = List.of();
            turnedWith = Optional.empty();
            renew();
        });
        bench.selectionProperty().addListener((o, old, now) -> renew());
        bench.draftProperty().addListener((o, old, now) -> renew());
    }

    void setPalette(Palette palette) {
        // The sky behind the planet is dark in the light theme too.
        view.setPalette(palette.equals(Palette.LIGHT) ? Palette.DARK : palette);
        shade.setVisible(palette.equals(Palette.RED));
    }

    PlanetView view() {
        return view;
    }

    /** The longitude system that is counted in. */
    RotationSystem system() {
        return bench.draft()
                .recipe()
                .map(r -> r.corrections().system().orElse(r.body().defaultSystem()))
                .orElse(RotationSystem.SINGLE);
    }

    private void renew() {
        Topic topic = bench.selectionProperty().get().topic();
        boolean alone = topic == Topic.DISK || (topic == Topic.FRAME && preview.get());
        Optional<DatedFrame> frame = alone ? bench.selectedFrame() : Optional.empty();
        Optional<Exposure> exposure = frame.flatMap(this::exposure);
        Optional<Disk> disk = frame.flatMap(f -> DiskPanel.disk(bench, f));
        if (exposure.isPresent() && disk.isPresent()) {
            showFrame(frame.get(), exposure.get(), disk.get());
        } else {
            frameShown = Optional.empty();
            view.showHandles(Optional.empty(), false);
            if (bench.renderer().displayProperty().get() == Display.TURNING) {
                turn();
            } else {
                view.show(bench.renderer().shownProperty().get(), system());
            }
            view.showDispersion(dispersion());
        }
    }

    /** Shows the turning globe, once its stills are made for what is on the bench. */
    private void turn() {
        Optional<Combination> c = bench.combination();
        Optional<Look> look = bench.draft().session().map(Session::look);
        if (c.isPresent() && !look.equals(turnedWith)) {
            turnedWith = look;
            bench.renderer().side().turning(c.get(), look.get(), made -> {
                stills = made;
                turning.play();
            });
        } else if (stills.isEmpty()) {
            view.show(bench.renderer().shownProperty().get(), system());
        }
    }

    private void nextStill() {
        if (!stills.isEmpty()) {
            still = (still + 1) % stills.size();
            view.show(Optional.of(stills.get(still)), system());
        }
    }

    private Optional<Exposure> exposure(DatedFrame frame) {
        return bench.timetableProperty().get().flatMap(t -> t.rows().stream()
                .map(r -> r.exposure())
                .filter(e -> e.frame().equals(frame))
                .filter(e -> frame.band().band().isPresent() || e.planeIndex() == 1)
                .findFirst());
    }

    private void showFrame(DatedFrame frame, Exposure exposure, Disk disk) {
        LimbHandles handles = new LimbHandles(exposure.globe(), disk);
        boolean held = DiskPanel.isHeld(bench, frame);
        if (frameShown.filter(frame::equals).isPresent()) {
            view.showHandles(handled(handles), held);
            return;
        }
        frameShown = Optional.of(frame);
        boolean lifted = bench.renderer().displayProperty().get() == Display.STRETCHED;
        bench.renderer().side().frame(exposure, disk, lifted, picture -> {
            if (frameShown.filter(frame::equals).isPresent()) {
                view.show(Optional.of(picture), system());
                DiskPanel.disk(bench, frame)
                        .ifPresent(d -> view.showHandles(
                                handled(new LimbHandles(handles.globe(), d)), DiskPanel.isHeld(bench, frame)));
            }
        });
    }

    /** Handles belong to the page Disk. */
    private Optional<LimbHandles> handled(LimbHandles handles) {
        return bench.selectionProperty().get().topic() == Topic.DISK ? Optional.of(handles) : Optional.empty();
    }

    /** Whether the selected frame is shown while its page is open. */
    BooleanProperty previewProperty() {
        return preview;
    }

    private List<OverlayPainter.Vector> dispersion() {
        return bench.combination()
                .map(c -> c.frames().stream()
                        .filter(f -> f.dispersion().isPresent())
                        .map(f -> new OverlayPainter.Vector(
                                f.exposure().band(), f.dispersion().get()))
                        .toList())
                .orElse(List.of());
    }

    /** Shows the bands in turn, or stops it. */
    void blink(boolean on) {
        if (on) {
            next();
            blink.play();
        } else {
            blink.stop();
            bench.renderer().displayProperty().set(Display.FINISHED);
        }
    }

    private void next() {
        int now = BANDS.indexOf(bench.renderer().displayProperty().get());
        bench.renderer().displayProperty().set(BANDS.get((now + 1) % BANDS.size()));
    }

    /** Shows the limb unrolled, or the finished picture again. */
    void unroll() {
        boolean on = bench.renderer().displayProperty().get() == Display.STRIP;
        bench.renderer().displayProperty().set(on ? Display.FINISHED : Display.STRIP);
    }

    void compare(ComparedPicture.Kind kind) {
        view.setSplit(kind != ComparedPicture.Kind.NONE, kind == ComparedPicture.Kind.UNPROCESSED);
        bench.renderer().compare(kind);
    }

    Optional<ScreenPicture> shown() {
        return view.shown();
    }
}
