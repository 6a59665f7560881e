package org.epochrome.desktop.panel;

import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Palette;
import org.epochrome.session.product.Session;

/** How detail is brought out: one curve over scale. */
public final class DetailPanel extends Panel {
    private final DetailCurve curve = new DetailCurve();
    private final Slider deblur;
    private final Slider gain;
    private final Slider peak;
    private final Slider octaves;
    private final Slider threshold;
    private final CheckBox own = new CheckBox("Peak at twice the blur");
    private final CheckBox each = new CheckBox("Each band by itself");
    private final Label values = prose("");

    public DetailPanel(Workspace bench) {
        super(bench);
        deblur = set("deblur", "Part of the blur that is taken off", 0, 0.8, v -> s -> s.withDeblur(v));
        gain = set("gain", "How much detail is strengthened at the top of the curve", 0, 3, v -> s -> s.withGain(v));
        peak = set("peak", "Size of the detail that is strengthened most, pixels", 1, 24, v -> s -> s.peakingAt(v));
        octaves = set("octaves", "How wide the curve is, in doublings of scale", 0.3, 3, v -> s -> s.withOctaves(v));
        threshold = set(
                "threshold",
                "Detail fainter than so many times the noise is left as it is",
                0,
                6,
                v -> s -> s.withThreshold(v));
        own.setId("peak-own");
        own.setTooltip(new Tooltip("Common practice, no source: detail about twice the blur gains most"));
        own.setOnAction(e -> edit(
                "set the peak",
                s -> new Sharpening(
                        s.deblur(),
                        s.iterations(),
                        s.smoothing(),
                        s.gain(),
                        own.isSelected() ? OptionalDouble.empty() : OptionalDouble.of(peak.getValue()),
                        OptionalDouble.empty(),
                        s.octaves(),
                        s.threshold(),
                        s.eachBand())));
        each.setId("each-band");
        each.setTooltip(new Tooltip("Red, green and blue each by its own detail; off keeps hues"));
        each.setOnAction(e -> edit("sharpen bands apart", s -> s.withEachBand(each.isSelected())));
        GridPane grid = grid();
        row(grid, "Blur taken off", deblur);
        row(grid, "Gain", gain);
        row(grid, "Peak (px)", peak);
        row(grid, "Width", octaves);
        row(grid, "Noise guard", threshold);
        getChildren()
                .addAll(
                        curve,
                        prose(
                                "Line: what detail of a scale is multiplied by. Bars: how strong detail is there; their solid part is noise."),
                        grid,
                        own,
                        each,
                        values);
    }

    private Slider set(
            String id,
            String teaches,
            double from,
            double to,
            java.util.function.DoubleFunction<UnaryOperator<Sharpening>> change) {
        return slider(
                id,
                teaches,
                from,
                to,
                v -> bench.tryOut(s -> s.with(sharpened(s, change.apply(v)))),
                v -> edit("set the detail", change.apply(v)));
    }

    private void edit(String name, UnaryOperator<Sharpening> change) {
        bench.editSession(name, s -> s.with(sharpened(s, change)));
    }

    private static Look sharpened(Session s, UnaryOperator<Sharpening> change) {
        Look l = s.look();
        return new Look(l.white(), change.apply(l.sharpening()), l.tone(), l.framing());
    }

    public void setPalette(Palette palette) {
        curve.setPalette(palette);
    }

    @Override
    void renew() {
        setDisable(bench.draft().session().isEmpty());
        bench.draft().session().ifPresent(s -> {
            Sharpening sharp = s.look().sharpening();
            show(deblur, sharp.deblur());
            show(gain, sharp.gain());
            show(octaves, sharp.octaves());
            show(threshold, sharp.threshold());
            boolean usual = sharp.peakPx().isEmpty();
            own.setSelected(usual);
            each.setSelected(sharp.eachBand());
            peak.setDisable(usual);
            sharp.peakPx().ifPresent(p -> show(peak, p));
            values.setText(Numbers.text(
                    "Blur taken off %.0f %%, gain %.2f, width %.1f doublings, guard %.1f times the noise.",
                    100 * sharp.deblur(), sharp.gain(), sharp.octaves(), sharp.threshold()));
            curve.show(sharp, bench.studio().detailProperty().get());
        });
    }

    private static void show(Slider slider, double value) {
        if (!slider.isValueChanging()) {
            slider.setValue(value);
        }
    }
}
