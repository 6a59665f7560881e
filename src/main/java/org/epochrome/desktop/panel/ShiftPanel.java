package org.epochrome.desktop.panel;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import org.epochrome.align.Witness;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.product.Session;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.PixelOffset;

/** How a band lies against the others: measured against predicted, and moved by hand. */
public final class ShiftPanel extends Panel {
    public static final double STEP_PX = 0.05;

    private final Label name = heading("");
    private final ShiftDrawing drawing = new ShiftDrawing();
    private final Label numbers = prose("");
    private final FormField x;
    private final FormField y;
    private final Map<Witness, CheckBox> witnesses = new LinkedHashMap<>();

    public ShiftPanel(Workspace bench) {
        super(bench);
        x = new FormField(
                "shift-x",
                "0",
                Texts.of("panel.shift.x.tip"),
                t -> set(new PixelOffset(Numbers.number(t), nudge().y())));
        y = new FormField(
                "shift-y",
                "0",
                Texts.of("panel.shift.y.tip"),
                t -> set(new PixelOffset(nudge().x(), Numbers.number(t))));
        Button zero = new Button(Texts.of("panel.shift.zero"));
        zero.setId("shift-zero");
        zero.setOnAction(e -> set(new PixelOffset(0, 0)));
        GridPane grid = grid();
        row(grid, Texts.of("panel.shift.x"), x);
        row(grid, Texts.of("panel.shift.y"), y);
        getChildren()
                .addAll(
                        name,
                        drawing,
                        prose(Texts.of("panel.shift.help")),
                        numbers,
                        grid,
                        zero,
                        prose(Texts.of("panel.shift.keys")),
                        heading(Texts.of("panel.shift.alignUsing")));
        for (Witness w : Witness.values()) {
            CheckBox box = new CheckBox(title(w));
            box.setId("witness-" + w.name().toLowerCase(java.util.Locale.ROOT));
            box.setTooltip(new Tooltip(meaning(w)));
            box.setOnAction(e -> hear(w, box.isSelected()));
            witnesses.put(w, box);
            getChildren().add(box);
        }
    }

    private static String title(Witness w) {
        return switch (w) {
            case LIMB -> Texts.of("panel.shift.limb");
            case DETAIL -> Texts.of("panel.shift.detail");
            case PHYSICS -> Texts.of("panel.shift.dispersion");
        };
    }

    private static String meaning(Witness w) {
        return switch (w) {
            case LIMB -> Texts.of("panel.shift.limb.tip");
            case DETAIL -> Texts.of("panel.shift.detail.tip");
            case PHYSICS -> Texts.of("panel.shift.dispersion.tip");
        };
    }

    private Optional<String> band() {
        return bench.selectedFrame().map(ShiftPanel::band);
    }

    private static String band(DatedFrame f) {
        return f.band().band().map(b -> b.name()).orElse("B");
    }

    private PixelOffset nudge() {
        return band().flatMap(b ->
                        bench.draft().recipe().map(r -> r.alignment().nudgesPx().get(b)))
                .orElse(new PixelOffset(0, 0));
    }

    /** Moves the chosen band's picture. */
    public void nudgeBy(double dx, double dy) {
        PixelOffset now = nudge();
        set(new PixelOffset(DiskPanel.hundredth(now.x() + dx), DiskPanel.hundredth(now.y() + dy)));
    }

    private void set(PixelOffset offset) {
        band().ifPresent(b -> bench.nudge(Texts.of("step.shift", b), s -> {
            Map<String, PixelOffset> all = new HashMap<>(s.recipe().alignment().nudgesPx());
            if (offset.lengthPx() == 0) {
                all.remove(b);
            } else {
                all.put(b, offset);
            }
            Alignment a = s.recipe().alignment();
            return with(s, a.with(Alignment::nudgesPx, all));
        }));
    }

    private void hear(Witness witness, boolean on) {
        bench.editSession(Texts.of("step.alignUsing"), s -> {
            Alignment a = s.recipe().alignment();
            Set<Witness> used = EnumSet.noneOf(Witness.class);
            used.addAll(a.witnesses());
            if (on) {
                used.add(witness);
            } else {
                used.remove(witness);
            }
            return with(s, a.with(Alignment::witnesses, used));
        });
    }

    private static Session with(Session s, Alignment alignment) {
        return s.with(s.recipe().with(alignment));
    }

    public void setPalette(Palette palette) {
        drawing.setPalette(palette);
    }

    private static String place(Combination.Witnesses w) {
        double limb = Math.max(w.limbError().sigmaX(), w.limbError().sigmaY());
        return w.placeSigmaPx() == 0
                ? Texts.of("panel.shift.reference", limb)
                : Texts.of("panel.shift.uncertainty", w.placeSigmaPx(), limb);
    }

    @Override
    protected void renew() {
        Optional<DatedFrame> frame = bench.selectedFrame();
        setDisable(bench.draft().session().isEmpty() || frame.isEmpty());
        name.setText(frame.map(f -> Texts.of("panel.shift.band", band(f))).orElse(Texts.of("panel.noFrame")));
        PixelOffset nudge = nudge();
        x.show(Numbers.plain(nudge.x()));
        y.show(Numbers.plain(nudge.y()));
        bench.draft()
                .recipe()
                .ifPresent(r -> witnesses.forEach(
                        (w, box) -> box.setSelected(r.alignment().witnesses().contains(w))));
        drawing.show(bench.renderer().combinationProperty().get(), band().orElse(""));
        say(
                numbers,
                frame.flatMap(f -> DiskPanel.result(bench, f))
                        .map(r -> Numbers.text(
                                "%s%s%s",
                                place(r.witnesses()),
                                r.witnesses().detail().known()
                                        ? Texts.of(
                                                "panel.shift.detailOffLimb",
                                                r.witnesses().detail().x(),
                                                r.witnesses().detail().y(),
                                                r.witnesses().detail().sigmaX(),
                                                r.witnesses().limbToDetail())
                                        : Texts.of("panel.shift.detailReference"),
                                r.dispersion()
                                        .map(d -> Texts.of(
                                                "panel.shift.predicted",
                                                d.x(),
                                                d.y(),
                                                r.smear().lengthPx()))
                                        .orElse(Texts.of("panel.shift.noSite"))))
                        .orElse(""));
    }
}
