package org.epochrome.evidence;

import static org.epochrome.evidence.Html.number;
import static org.epochrome.evidence.Markup.attribute;
import static org.epochrome.evidence.Markup.element;

import java.util.List;
import org.epochrome.colour.merge.Coverage;
import org.epochrome.image.Plane;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.report.Covered;

/** How much each frame counts in its band, and how well each place of the picture is founded. */
final class WeightSection {
    private static final int PICTURE_PX = 240;

    private final Combination c;
    private final double reach;

    WeightSection(Combination combination, double reach) {
        this.c = combination;
        this.reach = reach;
    }

    Markup html() {
        List<Markup> pictures = c.coverage().entrySet().stream()
                .map(e -> picture(e.getKey(), e.getValue()))
                .toList();
        List<List<Object>> rows = c.frames().stream().map(this::row).toList();
        return Html.section(
                "Weights and coverage",
                Html.row("frames", pictures),
                Html.table(List.of("band", "frame", "weight in its band", "noise", "blur"), rows));
    }

    private List<Object> row(FrameResult f) {
        return List.of(
                Labels.band(f),
                Labels.name(f),
                Markup.of(
                        element(
                                "span",
                                attribute("class", "bar"),
                                attribute("style", "width:" + Html.at(120 * f.weight()) + "px")),
                        number("%.1f %%", 100 * f.weight())),
                number("%.2f %%", 100 * f.limb().noise() / f.limb().brightness()),
                number("%.1f px", f.limb().shading().blurPx()));
    }

    private Markup picture(String band, Coverage coverage) {
        Crop crop = Crop.around(c.disk(), reach, PICTURE_PX);
        Plane weight = crop.of(coverage.weight());
        float most = 0;
        for (float value : weight.data()) {
            most = Math.max(most, value);
        }
        for (int i = 0; i < weight.data().length; i++) {
            weight.data()[i] = most > 0 ? weight.data()[i] / most : 0;
        }
        Covered covered = Covered.of(coverage, c.disk());
        long frames = c.frames().stream()
                .filter(f -> f.exposure().band().name().equals(band))
                .count();
        return Html.figure(
                Html.picture(List.of(weight), "Weight of " + band),
                Labels.band(band),
                " "
                        + (frames == 1
                                ? "one frame"
                                : frames + " frames; each point is covered by "
                                        + number("%.0f", covered.leastFrames()) + " to "
                                        + number("%.0f", covered.mostFrames())
                                        + ", on average " + number("%.1f", covered.meanFrames()))
                        + ". White: greatest weight; black: not covered.");
    }
}
