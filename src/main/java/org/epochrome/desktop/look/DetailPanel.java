package org.epochrome.desktop.look;

import org.epochrome.desktop.panel.Panel;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.colour.finish.Sharpening.DetailOf;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.product.Session;

/** How detail is brought out: one curve over scale. */
public final class DetailPanel extends Panel {
    private final DetailCurve curve = new DetailCurve();
    private final Slider deblur;
    private final Slider gain;
    private final Slider peak;
    private final Slider octaves;
    private final Slider threshold;
    private final CheckBox own = new CheckBox(Texts.of("panel.detail.ownPeak"));
    private final CheckBox each = new CheckBox(Texts.of("panel.detail.eachBand"));
    private final Label values = prose("");

    public DetailPanel(Workspace bench) {
        super(bench);
        deblur = set("deblur", Texts.of("panel.detail.deblur.tip"), 0, 0.8, v -> s -> s.with(Sharpening::deblur, v));
        gain = set("gain", Texts.of("panel.detail.gain.tip"), 0, 3, v -> s -> s.with(Sharpening::gain, v));
        peak = set("peak", Texts.of("panel.detail.peak.tip"), 1, 24, v -> s -> s.peakingAt(v));
        octaves = set("octaves", Texts.of("panel.detail.width.tip"), 0.3, 3, v -> s -> s.with(Sharpening::octaves, v));
        threshold = set(
                "threshold", Texts.of("panel.detail.threshold.tip"), 0, 6, v -> s -> s.with(Sharpening::threshold, v));
        own.setId("peak-own");
        own.setTooltip(new Tooltip(Texts.of("panel.detail.ownPeak.tip")));
        own.setOnAction(e -> edit(
                Texts.of("step.peak"),
                s -> own.isSelected()
                        ? s.with(Sharpening::peakPx, OptionalDouble.empty())
                                .with(Sharpening::peakArcsec, OptionalDouble.empty())
                        : s.peakingAt(peak.getValue())));
        each.setId("each-band");
        each.setTooltip(new Tooltip(Texts.of("panel.detail.eachBand.tip")));
        each.setOnAction(e -> edit(
                Texts.of("step.eachBand"),
                s -> s.with(Sharpening::detailOf, each.isSelected() ? DetailOf.BANDS : DetailOf.LUMINANCE)));
        GridPane grid = grid();
        row(grid, Texts.of("panel.detail.deblur"), deblur);
        row(grid, Texts.of("panel.detail.gain"), gain);
        row(grid, Texts.of("panel.detail.peak"), peak);
        row(grid, Texts.of("panel.detail.width"), octaves);
        row(grid, Texts.of("panel.detail.threshold"), threshold);
        getChildren().addAll(curve, prose(Texts.of("panel.detail.help")), grid, own, each, values);
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
                v -> edit(Texts.of("step.detail"), change.apply(v)));
    }

    private void edit(String name, UnaryOperator<Sharpening> change) {
        bench.editSession(name, s -> s.with(sharpened(s, change)));
    }

    private static Look sharpened(Session s, UnaryOperator<Sharpening> change) {
        return s.look().with(Look::sharpening, change.apply(s.look().sharpening()));
    }

    public void setPalette(Palette palette) {
        curve.setPalette(palette);
    }

    @Override
    protected void renew() {
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
            values.setText(Texts.of(
                    "panel.detail.values", 100 * sharp.deblur(), sharp.gain(), sharp.octaves(), sharp.threshold()));
            curve.show(sharp, bench.renderer().detailProperty().get());
        });
    }

    private static void show(Slider slider, double value) {
        if (!slider.isValueChanging()) {
            slider.setValue(value);
        }
    }
}
