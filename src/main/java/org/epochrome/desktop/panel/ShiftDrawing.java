package org.epochrome.desktop.panel;

import java.util.List;
import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;
import org.epochrome.desktop.style.Numbers;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.recipe.PixelOffset;

/**
 * Shifts as a small polar drawing, G in the middle: dots where frames were measured to lie against the mean of G, less what the
 * mount drifted, which nobody can predict, and rings where dispersion puts their bands.
 */
final class ShiftDrawing extends Region {
    private static final double SIZE = 220;
    private static final double MARGIN = 22;
    private static final double[] ROUND = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50};

    private final Canvas canvas = new Canvas(SIZE, SIZE);
    private Palette palette = Palette.DARK;
    private Optional<Combination> combination = Optional.empty();
    private String chosen = "";

    ShiftDrawing() {
        getChildren().add(canvas);
        setId("shift-drawing");
        setMinSize(SIZE, SIZE);
        setPrefSize(SIZE, SIZE);
        setMaxSize(SIZE, SIZE);
    }

    void setPalette(Palette next) {
        palette = next;
        paint();
    }

    void show(Optional<Combination> c, String band) {
        combination = c;
        chosen = band;
        paint();
    }

    private void paint() {
        GraphicsContext pen = canvas.getGraphicsContext2D();
        pen.clearRect(0, 0, SIZE, SIZE);
        pen.setFont(Font.font(10));
        double reach = combination.map(ShiftDrawing::reach).orElse(1.0);
        double scale = (SIZE / 2 - MARGIN) / reach;
        pen.setStroke(palette.faint());
        pen.setLineWidth(1);
        for (double part : new double[] {0.5, 1}) {
            double r = part * reach * scale;
            pen.strokeOval(SIZE / 2 - r, SIZE / 2 - r, 2 * r, 2 * r);
        }
        pen.strokeLine(MARGIN, SIZE / 2, SIZE - MARGIN, SIZE / 2);
        pen.strokeLine(SIZE / 2, MARGIN, SIZE / 2, SIZE - MARGIN);
        pen.setFill(palette.ink().deriveColor(0, 1, 1, 0.8));
        pen.setTextAlign(TextAlignment.RIGHT);
        pen.setTextBaseline(VPos.BOTTOM);
        pen.fillText(Texts.of("panel.shift.scale", Numbers.plain(reach)), SIZE - 4, SIZE - 4);
        combination.ifPresent(c -> c.frames().forEach(f -> paint(pen, c, f, scale)));
    }

    private void paint(GraphicsContext pen, Combination c, FrameResult f, double scale) {
        Color colour = palette.of(f.exposure().band().passband());
        boolean bold = f.exposure().band().name().equals(chosen);
        f.dispersion().ifPresent(d -> {
            double x = SIZE / 2 + scale * d.x();
            double y = SIZE / 2 + scale * d.y();
            pen.setStroke(colour);
            pen.setLineWidth(bold ? 2.4 : 1.4);
            pen.strokeOval(x - 7, y - 7, 14, 14);
        });
        measured(c, f).ifPresent(m -> {
            double x = SIZE / 2 + scale * m.x();
            double y = SIZE / 2 + scale * m.y();
            double r = bold ? 4 : 3;
            pen.setFill(colour);
            pen.fillOval(x - r, y - r, 2 * r, 2 * r);
            pen.setTextAlign(TextAlignment.LEFT);
            pen.setTextBaseline(VPos.CENTER);
            pen.setFill(colour.interpolate(palette.ink(), 0.5));
            pen.fillText(f.exposure().band().name(), x + 10, y);
        });
    }

    /** Where a plane lies against green of the same frame, or where the detail of a frame lies on the predicted place. */
    private static Optional<PixelOffset> measured(Combination c, FrameResult f) {
        if (f.exposure().frame().band().band().isEmpty()) {
            return c.frames().stream()
                    .filter(g -> g.exposure().frame().equals(f.exposure().frame())
                            && g.exposure().band().name().equals("G"))
                    .findFirst()
                    .map(g -> new PixelOffset(
                            f.disk().x() - g.disk().x(), f.disk().y() - g.disk().y()));
        }
        PixelOffset base = f.dispersion().orElse(new PixelOffset(0, 0));
        return f.witnesses().detail().known() || f.exposure().band().name().equals("G")
                ? Optional.of(new PixelOffset(
                        base.x() + f.witnesses().detail().x(),
                        base.y() + f.witnesses().detail().y()))
                : Optional.empty();
    }

    /** A round number of pixels that holds everything. */
    private static double reach(Combination c) {
        double most = c.frames().stream()
                .flatMap(f -> List.of(measured(c, f), f.dispersion()).stream())
                .flatMap(Optional::stream)
                .mapToDouble(PixelOffset::lengthPx)
                .max()
                .orElse(1);
        for (double round : ROUND) {
            if (round >= most) {
                return round;
            }
        }
        return most;
    }
}
