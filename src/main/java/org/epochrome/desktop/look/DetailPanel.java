package org.epochrome.desktop.look;

import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import org.epochrome.colour.finish.Look;
import org.epochrome.colour.finish.Sharpening;
import org.epochrome.colour.finish.Sharpening.DetailOf;
import org.epochrome.desktop.control.Workspace;
import org.epochrome.desktop.panel.Panel;
import org.epochrome.desktop.panel.SliderField;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.product.Session;

/** How detail is brought out: one curve over scale. */
public final class DetailPanel extends Panel {
    private final DetailCurve curve;
    private final SliderField deblur;
    private final SliderField gain;
    private final SliderField peak;
    private final SliderField octaves;
    private final SliderField threshold;
    private final SliderField noise;
    private final CheckBox own = new CheckBox(Texts.of("panel.detail.ownPeak"));
    private final CheckBox each = new CheckBox(Texts.of("panel.detail.eachBand"));

    public DetailPanel(Workspace bench) {
        super(bench);
        curve = new DetailCurve(
                changed -> bench.tryOut(s -> s.with(sharpened(s, now -> changed))),
                changed -> edit(Texts.of("step.detail"), now -> changed));
        Sharpening usual = Sharpening.DEFAULT;
        deblur = set(
                "deblur",
                new String[] {Texts.of("panel.detail.deblur"), Texts.of("panel.detail.deblur.tip")},
                new double[] {0, 0.8},
                usual.deblur(),
                v -> s -> s.with(Sharpening::deblur, v));
        gain = set(
                "gain",
                new String[] {Texts.of("panel.detail.gain"), Texts.of("panel.detail.gain.tip")},
                new double[] {0, 3},
                usual.gain(),
                v -> s -> s.with(Sharpening::gain, v));
        peak = set(
                "peak",
                new String[] {Texts.of("panel.detail.peak"), Texts.of("panel.detail.peak.tip")},
                new double[] {1, 24},
                2,
                v -> s -> s.peakingAt(v));
        octaves = set(
                "octaves",
                new String[] {Texts.of("panel.detail.width"), Texts.of("panel.detail.width.tip")},
                new double[] {0.3, 3},
                usual.octaves(),
                v -> s -> s.with(Sharpening::octaves, v));
        threshold = set(
                "threshold",
                new String[] {Texts.of("panel.detail.threshold"), Texts.of("panel.detail.threshold.tip")},
                new double[] {0, 6},
                usual.threshold(),
                v -> s -> s.with(Sharpening::threshold, v));
        noise = set(
                "noise-reduction",
                new String[] {Texts.of("panel.detail.noise"), Texts.of("panel.detail.noise.tip")},
                new double[] {0, 1},
                usual.noiseReduction(),
                v -> s -> s.with(Sharpening::noiseReduction, v));
        own.setId("peak-own");
        own.setTooltip(new Tooltip(Texts.of("panel.detail.ownPeak.tip")));
        own.setOnAction(e -> edit(
                Texts.of("step.peak"),
                s -> own.isSelected()
                        ? s.with(Sharpening::peakPx, OptionalDouble.empty())
                                .with(Sharpening::peakArcsec, OptionalDouble.empty())
                        : s.peakingAt(peak.value())));
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
        row(grid, Texts.of("panel.detail.noise"), noise);
        getChildren().addAll(curve, prose(Texts.of("panel.detail.help")), grid, own, each);
    }

    private SliderField set(
            String id,
            String[] words,
            double[] range,
            double usual,
            java.util.function.DoubleFunction<UnaryOperator<Sharpening>> change) {
        return sliderField(
                id,
                words[0],
                words[1],
                range,
                usual,
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
            deblur.show(sharp.deblur());
            gain.show(sharp.gain());
            octaves.show(sharp.octaves());
            threshold.show(sharp.threshold());
            noise.show(sharp.noiseReduction());
            boolean usual = sharp.peakPx().isEmpty();
            own.setSelected(usual);
            each.setSelected(sharp.eachBand());
            peak.setDisable(usual);
            sharp.peakPx().ifPresent(peak::show);
            curve.show(sharp, bench.renderer().detailProperty().get());
        });
    }
}
