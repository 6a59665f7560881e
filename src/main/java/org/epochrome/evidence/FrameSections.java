package org.epochrome.evidence;

import static org.epochrome.evidence.Html.number;
import static org.epochrome.evidence.Labels.band;
import static org.epochrome.evidence.Labels.clock;
import static org.epochrome.evidence.Labels.name;
import static org.epochrome.evidence.Labels.pair;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.recipe.PixelOffset;

/** Sections about single frames. Their pixels are read one at a time, so that any number of them fits into memory. */
final class FrameSections {
    private static final int FRAME_PX = 240;

    private final Combination c;
    private final double reach;
    private final List<Markup> figures = new ArrayList<>();
    private final ColourCube plain;

    /** @param reach what is shown of a frame, radii around the disk's centre */
    FrameSections(Combination combination, double reach) {
        this.c = combination;
        this.reach = reach;
        PlainStack stack = new PlainStack(c);
        for (FrameResult f : c.frames()) {
            Plane plane = f.exposure().load();
            stack.add(f, plane);
            figures.add(figure(f, plane));
        }
        plain = stack.cube();
    }

    /** The picture that the frames give when they are only aligned by their centroids. */
    ColourCube plain() {
        return plain;
    }

    Markup times() {
        List<List<Object>> rows = c.frames().stream()
                .map(f -> List.<Object>of(
                        band(f),
                        name(f),
                        clock(f.exposure().frame().timing().span().start()),
                        clock(f.exposure().frame().timing().span().end()),
                        f.exposure().frame().timing().source(),
                        number("%+.3f\u00b0", f.rotationDeg())))
                .toList();
        return Html.section(
                "When the frames were recorded",
                Drawings.timeLine(c),
                Html.table(List.of("band", "frame", "start (UTC)", "end", "time from", "turned"), rows));
    }

    /** Each frame with its limb. */
    Markup frames() {
        return Html.section("Frames and their fitted limbs", Html.row("frames", figures));
    }

    private Markup figure(FrameResult f, Plane plane) {
        View view = new View(f.exposure().globe(), f.disk());
        return Html.figure(
                Drawings.limb(plane, f, view, FRAME_PX, reach),
                band(f),
                " centre " + number("%.2f", f.disk().x()) + ", "
                        + number("%.2f", f.disk().y())
                        + " \u00b1 " + number("%.2f", f.limb().centreSigmaPx()) + " px, radius "
                        + number("%.2f", f.disk().equatorialRadiusPx()) + " px, blur "
                        + number("%.1f", f.limb().shading().blurPx()) + " px");
    }

    Markup shifts() {
        FrameResult zero = c.frames().get(PlainStack.reference(c));
        List<List<Object>> rows = c.frames().stream()
                .map(f -> {
                    PixelOffset m = Drawings.measured(f, zero);
                    PixelOffset p = Drawings.predicted(f, zero);
                    return List.<Object>of(
                            band(f),
                            pair(m.x(), m.y()),
                            f.dispersion().isPresent() ? pair(p.x(), p.y()) : "\u2013",
                            f.dispersion().isPresent() ? pair(m.x() - p.x(), m.y() - p.y()) : "\u2013",
                            pair(f.correction().x(), f.correction().y()),
                            f.witnesses().placeSigmaPx() == 0
                                    ? "\u2013"
                                    : "\u00b1 " + number("%.3f", f.witnesses().placeSigmaPx()));
                })
                .toList();
        String caption = c.frames().stream().anyMatch(f -> f.dispersion().isPresent())
                ? "Dots: measured position of each disk relative to the reference frame. Rings: position predicted"
                        + " from atmospheric dispersion alone. The difference is the drift of the mount."
                : "Dots: measured position of each disk relative to the reference frame. Without a site, dispersion"
                        + " cannot be predicted.";
        Markup table = Html.table(
                List.of(
                        "band",
                        "measured (px)",
                        "predicted (px)",
                        "difference",
                        "shift from limb (px)",
                        "position error"),
                rows);
        return Html.section(
                "Shifts, measured and predicted",
                Html.row("beside", List.of(Html.figure(Drawings.shifts(c), caption), table)));
    }
}
