package org.epochrome.desktop.panel;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.disk.Disk;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.recipe.HeldDisk;

/** The disk in a frame: where the fit puts it, how sure that is, and where it is held by hand. */
public final class DiskPanel extends Panel {
    private final Label name = heading("");
    private final FormField x;
    private final FormField y;
    private final FormField radius;
    private final FormField north;
    private final Label sure = prose("");
    private final ToggleButton lock = new ToggleButton("Hold");
    private final Button refit = new Button("Fit again");

    public DiskPanel(Workspace bench) {
        super(bench);
        x = new FormField(
                "disk-x",
                "",
                "Column of the centre, pixels; (0, 0) is the middle of the top-left pixel",
                t -> change(d -> new HeldDisk(Numbers.number(t), d.y(), d.equatorialRadiusPx(), d.northAngleDeg())));
        y = new FormField(
                "disk-y",
                "",
                "Row of the centre, pixels, downward",
                t -> change(d -> new HeldDisk(d.x(), Numbers.number(t), d.equatorialRadiusPx(), d.northAngleDeg())));
        radius = new FormField(
                "disk-radius",
                "",
                "Radius of the limb along the equator, pixels",
                t -> change(d -> new HeldDisk(d.x(), d.y(), Numbers.number(t), d.northAngleDeg())));
        north = new FormField(
                "disk-north",
                "found",
                "North angle of this frame; empty: as the fit finds it",
                t -> change(d -> new HeldDisk(d.x(), d.y(), d.equatorialRadiusPx(), Numbers.optional(t))));
        lock.setId("disk-hold");
        lock.setTooltip(new Tooltip("Keep the disk where it is; it is not fitted then"));
        lock.setOnAction(e -> {
            if (lock.isSelected()) {
                change(d -> d);
            } else {
                release();
            }
        });
        refit.setId("disk-refit");
        refit.setTooltip(new Tooltip("Let go of the disk and fit it anew"));
        refit.setOnAction(e -> release());
        GridPane grid = grid();
        row(grid, "Centre x (px)", x);
        row(grid, "Centre y (px)", y);
        row(grid, "Radius (px)", radius);
        row(grid, "North (°)", north);
        getChildren()
                .addAll(
                        name,
                        grid,
                        sure,
                        pair(lock, refit),
                        prose(
                                "On the picture: drag the middle to move the limb, a handle on it to change its size, the"
                                        + " one beyond the pole to turn it. Arrow keys move by 0.05 px, with Shift by 0.5 px."));
    }

    /** Where the disk of a frame is drawn: held, or found. */
    public static Optional<Disk> disk(Workspace bench, DatedFrame frame) {
        Optional<Combination.FrameResult> found = result(bench, frame);
        HeldDisk held = bench.draft()
                .recipe()
                .map(r -> r.frames().disks().get(frame.head().file()))
                .orElse(null);
        if (held == null) {
            return found.map(f -> f.limb().disk());
        }
        OptionalDouble fitted =
                found.isPresent() ? OptionalDouble.of(found.get().disk().northAngleDeg()) : OptionalDouble.empty();
        return Optional.of(new Disk(
                held.x(),
                held.y(),
                held.equatorialRadiusPx(),
                held.northAngleDeg().orElse(fitted.orElse(0)),
                found.isPresent() && found.get().disk().mirrored()));
    }

    static Optional<Combination.FrameResult> result(Workspace bench, DatedFrame frame) {
        return bench.studio().combinationProperty().get().flatMap(c -> c.frames().stream()
                .filter(f ->
                        f.exposure().frame().head().file().equals(frame.head().file()))
                .filter(f -> f.exposure().frame().band().band().isPresent()
                        || f.exposure().planeIndex() == 1)
                .findFirst());
    }

    public static boolean isHeld(Workspace bench, DatedFrame frame) {
        return bench.draft()
                .recipe()
                .filter(r -> r.frames().disks().containsKey(frame.head().file()))
                .isPresent();
    }

    private void change(UnaryOperator<HeldDisk> change) {
        bench.selectedFrame().ifPresent(f -> disk(bench, f).ifPresent(d -> {
            HeldDisk next = change.apply(
                    new HeldDisk(hundredth(d.x()), hundredth(d.y()), hundredth(d.equatorialRadiusPx()), heldNorth(f)));
            bench.editSession("hold a disk", s -> FrameEdits.held(s, f, Optional.of(next)));
        }));
    }

    private OptionalDouble heldNorth(DatedFrame f) {
        HeldDisk held = bench.draft()
                .recipe()
                .map(r -> r.frames().disks().get(f.head().file()))
                .orElse(null);
        return held == null ? OptionalDouble.empty() : held.northAngleDeg();
    }

    public static double hundredth(double value) {
        return Math.rint(100 * value) / 100;
    }

    private void release() {
        bench.selectedFrame()
                .ifPresent(f -> bench.editSession("fit a disk again", s -> FrameEdits.held(s, f, Optional.empty())));
    }

    @Override
    void renew() {
        Optional<DatedFrame> frame = bench.selectedFrame();
        Optional<Disk> disk = frame.flatMap(f -> disk(bench, f));
        setDisable(disk.isEmpty());
        name.setText(frame.map(f -> f.head().file().getFileName().toString()).orElse("No frame is chosen"));
        disk.ifPresent(d -> {
            x.show(Numbers.text("%.2f", d.x()));
            y.show(Numbers.text("%.2f", d.y()));
            radius.show(Numbers.text("%.2f", d.equatorialRadiusPx()));
        });
        boolean held = frame.filter(f -> isHeld(bench, f)).isPresent();
        frame.ifPresent(f -> {
            north.show(Numbers.plain(heldNorth(f)));
            disk.ifPresent(d -> north.setPromptText(Numbers.text("found: %.2f", d.northAngleDeg())));
        });
        lock.setSelected(held);
        lock.setText(held ? "Held" : "Hold");
        refit.setDisable(!held);
        sure.setText(frame.flatMap(f -> result(bench, f))
                .map(r -> held ? "Held by hand; not fitted." : described(r))
                .orElse("The disk is being fitted."));
    }

    private static String described(Combination.FrameResult r) {
        return Numbers.text(
                "Standard errors: centre ± %.3f px, radius ± %.3f px, north ± %.2f°.%n"
                        + "Blur %.2f px, limb darkening exponent %.2f, rest %.1f %% of the brightness.",
                r.limb().centreSigmaPx(),
                r.limb().radiusSigmaPx(),
                r.limb().northSigmaDeg(),
                r.limb().shading().blurPx(),
                r.limb().shading().minnaert(),
                100 * r.limb().residual());
    }
}
