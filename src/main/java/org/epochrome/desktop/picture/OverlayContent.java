package org.epochrome.desktop.picture;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.text.TextAlignment;
import org.epochrome.desktop.render.ScreenPicture;
import org.epochrome.desktop.state.LimbHandles;
import org.epochrome.desktop.state.Zoom;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.evidence.LimbStrip;

/**
 * All that decides what is drawn over the picture: equal sketches need no new drawing.
 *
 * @param shown the picture below
 * @param zoom how it lies in the view
 * @param overlays which lines are wanted
 * @param system that meridians count in
 * @param handles of a limb that is drawn by hand
 * @param held whether that limb is held
 * @param dispersion how the air shifts the bands
 * @param palette colours of the lines
 * @param unprocessed whether the picture left of the split line is the result without its processing
 * @param split where the split line stands; empty if there is none
 */
record OverlayContent(
        ScreenPicture shown,
        Zoom zoom,
        Set<Overlay> overlays,
        RotationSystem system,
        Optional<LimbHandles> handles,
        boolean held,
        List<OverlayPainter.Vector> dispersion,
        Palette palette,
        boolean unprocessed,
        Optional<Double> split) {
    private static final double LEGEND_TOP = 54;
    /** In small views part of the height, above the planet. */
    private static final double LEGEND_PART = 0.02;

    private static final double QUARTER_DEG = 90;
    /** Pixels of the window that a quarter must take for a name in its middle too. */
    private static final double ROOMY = 100;
    /** What a line of writing takes. */
    private static final double LINE_PX = 15;

    OverlayContent {
        overlays = Set.copyOf(overlays);
    }

    /** Whether there is anything to draw. */
    boolean draws() {
        return !overlays.isEmpty()
                || handles.isPresent()
                || split.isPresent()
                || shown.form() != ScreenPicture.Form.SKY;
    }

    void on(Canvas canvas) {
        GraphicsContext pen = canvas.getGraphicsContext2D();
        pen.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        OverlayPainter pencil = new OverlayPainter(pen, zoom, palette);
        if (shown.strip().isPresent()) {
            strip(pencil, shown.strip().get());
            return;
        }
        if (shown.form() == ScreenPicture.Form.GLOBE) {
            if (overlays.contains(Overlay.GRATICULE) && shown.width() == 2 * shown.height()) {
                pencil.grid(shown.width(), shown.height());
            }
            return;
        }
        if (shown.form() == ScreenPicture.Form.FRAMED) {
            pencil.edge(shown.width() * shown.factor(), shown.height() * shown.factor());
        }
        handles.ifPresentOrElse(
                h -> pencil.handles(h, held),
                () -> pencil.draw(overlays, shown.aspect(), shown.disk(), system, dispersion));
        split.ifPresent(x -> split(pen, Math.round(x) + 0.5, canvas.getHeight()));
    }

    private void strip(OverlayPainter pencil, LimbStrip strip) {
        pencil.edge(strip.columns(), strip.rows());
        pencil.across(strip.row(0), strip.columns(), Texts.of("picture.strip.limb"));
        double twoPx = zoom.scale() * Math.abs(strip.row(2) - strip.row(0));
        for (int px = 2; px < strip.reachPx(); px += twoPx > LINE_PX ? 2 : 4) {
            pencil.mark(-0.5, strip.row(px), Texts.of("picture.strip.offset", px));
            pencil.mark(-0.5, strip.row(-px), Texts.of("picture.strip.offset", -px));
        }
        double quarter = zoom.scale() * strip.columns() * QUARTER_DEG / 360;
        double step = quarter > ROOMY ? QUARTER_DEG / 2 : quarter > 0.5 * ROOMY ? QUARTER_DEG : 2 * QUARTER_DEG;
        for (double angle = 0; angle < 360; angle += step) {
            double column = angle / 360 * strip.columns() - 0.5;
            String text = angle == 0
                    ? Texts.of("picture.strip.north")
                    : angle == 180 ? Texts.of("picture.strip.south") : String.format(Locale.ROOT, "%.0f°", angle);
            pencil.below(column, strip.rows() - 0.5, text);
        }
    }

    private void split(GraphicsContext pen, double x, double height) {
        pen.setStroke(palette.accent());
        pen.setLineWidth(1);
        pen.strokeLine(x, 0, x, height);
        pen.setFill(palette.accent());
        pen.fillOval(x - 5, height / 2 - 5, 10, 10);
        double top = Math.min(LEGEND_TOP, 4 + LEGEND_PART * height);
        pen.setTextBaseline(VPos.TOP);
        pen.setTextAlign(TextAlignment.RIGHT);
        pen.fillText(unprocessed ? Texts.of("picture.unprocessed") : Texts.of("picture.before"), x - 10, top);
        pen.setTextAlign(TextAlignment.LEFT);
        pen.fillText(unprocessed ? Texts.of("picture.processed") : Texts.of("picture.after"), x + 10, top);
    }
}
