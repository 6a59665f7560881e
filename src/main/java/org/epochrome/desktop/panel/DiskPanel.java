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
import org.epochrome.desktop.style.Texts;
import org.epochrome.disk.Disk;
import org.epochrome.io.file.VisibleText;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.recipe.ManualDisk;

/** The disk in a frame: where the fit puts it, how sure that is, and where it is held by hand. */
public final class DiskPanel extends Panel {
    private final Label name = heading("");
    private final FormField x;
    private final FormField y;
    private final FormField radius;
    private final FormField north;
    private final Label sure = prose("");
    private final ToggleButton lock = new ToggleButton(Texts.of("panel.disk.fix"));
    private final Button refit = new Button(Texts.of("panel.disk.refit"));

    public DiskPanel(Workspace bench) {
        super(bench);
        x = new FormField(
                "disk-x",
                "",
                Texts.of("panel.disk.x.tip"),
                t -> change(d -> new ManualDisk(Numbers.number(t), d.y(), d.equatorialRadiusPx(), d.northAngleDeg())));
        y = new FormField(
                "disk-y",
                "",
                Texts.of("panel.disk.y.tip"),
                t -> change(d -> new ManualDisk(d.x(), Numbers.number(t), d.equatorialRadiusPx(), d.northAngleDeg())));
        radius = new FormField(
                "disk-radius",
                "",
                Texts.of("panel.disk.radius.tip"),
                t -> change(d -> new ManualDisk(d.x(), d.y(), Numbers.number(t), d.northAngleDeg())));
        north = new FormField(
                "disk-north",
                Texts.of("panel.disk.north.prompt"),
                Texts.of("panel.disk.north.tip"),
                t -> change(d -> new ManualDisk(d.x(), d.y(), d.equatorialRadiusPx(), Numbers.optional(t))));
        lock.setId("disk-hold");
        lock.setTooltip(new Tooltip(Texts.of("panel.disk.fix.tip")));
        lock.setOnAction(e -> {
            if (lock.isSelected()) {
                change(d -> d);
            } else {
                release();
            }
        });
        refit.setId("disk-refit");
        refit.setTooltip(new Tooltip(Texts.of("panel.disk.refit.tip")));
        refit.setOnAction(e -> release());
        GridPane grid = grid();
        row(grid, Texts.of("panel.disk.x"), x);
        row(grid, Texts.of("panel.disk.y"), y);
        row(grid, Texts.of("panel.disk.radius"), radius);
        row(grid, Texts.of("panel.disk.north"), north);
        getChildren().addAll(name, grid, sure, pair(lock, refit), prose(Texts.of("panel.disk.help")));
    }

    /** Where the disk of a frame is drawn: held, or found. */
    public static Optional<Disk> disk(Workspace bench, DatedFrame frame) {
        Optional<Combination.FrameResult> found = result(bench, frame);
        ManualDisk held = bench.draft()
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
        return bench.renderer().combinationProperty().get().flatMap(c -> c.frames().stream()
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

    private void change(UnaryOperator<ManualDisk> change) {
        bench.selectedFrame().ifPresent(f -> disk(bench, f).ifPresent(d -> {
            ManualDisk next = change.apply(new ManualDisk(
                    hundredth(d.x()), hundredth(d.y()), hundredth(d.equatorialRadiusPx()), heldNorth(f)));
            bench.editSession(Texts.of("step.fixDisk"), s -> FrameEdits.held(s, f, Optional.of(next)));
        }));
    }

    private OptionalDouble heldNorth(DatedFrame f) {
        ManualDisk held = bench.draft()
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
                .ifPresent(f ->
                        bench.editSession(Texts.of("step.refitDisk"), s -> FrameEdits.held(s, f, Optional.empty())));
    }

    @Override
    protected void renew() {
        Optional<DatedFrame> frame = bench.selectedFrame();
        Optional<Disk> disk = frame.flatMap(f -> disk(bench, f));
        setDisable(disk.isEmpty());
        name.setText(frame.map(f -> VisibleText.of(f.head().file().getFileName().toString()))
                .orElse(Texts.of("panel.noFrame")));
        disk.ifPresent(d -> {
            x.show(Numbers.text("%.2f", d.x()));
            y.show(Numbers.text("%.2f", d.y()));
            radius.show(Numbers.text("%.2f", d.equatorialRadiusPx()));
        });
        boolean held = frame.filter(f -> isHeld(bench, f)).isPresent();
        frame.ifPresent(f -> {
            north.show(Numbers.plain(heldNorth(f)));
            disk.ifPresent(d -> north.setPromptText(Texts.of("panel.disk.north.found", d.northAngleDeg())));
        });
        lock.setSelected(held);
        lock.setText(held ? Texts.of("panel.disk.fixed") : Texts.of("panel.disk.fix"));
        refit.setDisable(!held);
        sure.setText(frame.flatMap(f -> result(bench, f))
                .map(r -> held ? Texts.of("panel.disk.manual") : described(r))
                .orElse(Texts.of("panel.disk.fitting")));
    }

    private static String described(Combination.FrameResult r) {
        return Texts.of(
                "panel.disk.fit",
                r.limb().centreSigmaPx(),
                r.limb().radiusSigmaPx(),
                r.limb().northSigmaDeg(),
                r.limb().shading().blurPx(),
                r.limb().shading().minnaert(),
                100 * r.limb().residual());
    }
}
