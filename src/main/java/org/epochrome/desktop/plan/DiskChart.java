package org.epochrome.desktop.plan;

import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;
import org.epochrome.desktop.style.Palette;
import org.epochrome.plan.drawing.DiskSketch;

/** The planet at an instant as lines: celestial north up, east on the left. */
final class DiskChart extends Canvas {
    private static final double POLE_TICK = 0.14;
    private static final double LEAST_SPOT_PX = 2;

    private final double reachRadii;
    private final boolean northUp;
    private DiskSketch sketch;
    private Palette palette = Palette.DARK;

    private DiskChart(double width, double height, double reachRadii, boolean northUp) {
        super(width, height);
        this.reachRadii = reachRadii;
        this.northUp = northUp;
    }

    /**
     * A drawing with celestial north up.
     *
     * @param width pixels
     * @param height pixels
     * @param reachRadii from the planet's centre to the sides
     */
    static DiskChart asInTheSky(double width, double height, double reachRadii) {
        return new DiskChart(width, height, reachRadii, false);
    }

    /** A drawing with the planet's north up, so that moons lie in a row. */
    static DiskChart alongTheEquator(double width, double height, double reachRadii) {
        return new DiskChart(width, height, reachRadii, true);
    }

    void setPalette(Palette next) {
        palette = next;
        paint();
    }

    void show(DiskSketch next, String text) {
        sketch = next;
        setAccessibleText(text);
        paint();
    }

    private void paint() {
        GraphicsContext g = getGraphicsContext2D();
        g.setFill(palette.paper());
        g.fillRect(0, 0, getWidth(), getHeight());
        if (sketch == null) {
            return;
        }
        Color ink = palette.ink();
        fill(g, sketch.limb(), ink.deriveColor(0, 1, 1, 0.22));
        fill(g, sketch.night(), palette.paper().deriveColor(0, 1, 1, 0.8));
        g.setLineWidth(0.6);
        sketch.graticule().forEach(piece -> stroke(g, piece, ink.deriveColor(0, 1, 1, 0.55)));
        g.setLineWidth(1);
        sketch.rings().forEach(piece -> stroke(g, piece, ink.deriveColor(0, 1, 1, 0.8)));
        g.setLineWidth(1.2);
        stroke(g, sketch.limb(), ink);
        DiskSketch.Point pole = sketch.pole();
        g.setStroke(palette.accent());
        g.setLineWidth(2);
        DiskSketch.Point tip = new DiskSketch.Point(pole.x() * (1 + POLE_TICK), pole.y() * (1 + POLE_TICK));
        g.strokeLine(x(pole), y(pole), x(tip), y(tip));
        g.setFont(Font.font(11));
        sketch.spots().forEach(s -> spot(g, s));
    }

    private void spot(GraphicsContext g, DiskSketch.Spot spot) {
        double x = x(spot.at());
        double y = y(spot.at());
        if (x < 0 || x > getWidth() || y < 0 || y > getHeight()) {
            return;
        }
        double r = Math.max(LEAST_SPOT_PX, spot.radius() * unit());
        if (spot.shadow()) {
            g.setFill(Color.BLACK);
            g.fillOval(x - r, y - r, 2 * r, 2 * r);
            return;
        }
        g.setStroke(palette.warm());
        g.setLineWidth(1.2);
        g.setLineDashes(spot.seen() ? new double[0] : new double[] {2, 2});
        g.strokeOval(x - r, y - r, 2 * r, 2 * r);
        g.setLineDashes();
        g.setFill(palette.ink());
        g.setTextAlign(TextAlignment.CENTER);
        g.setTextBaseline(VPos.BOTTOM);
        g.fillText(spot.name().substring(0, 1), x, y - r - 1);
    }

    private void fill(GraphicsContext g, List<DiskSketch.Point> outline, Color colour) {
        if (!outline.isEmpty()) {
            g.setFill(colour);
            g.fillPolygon(xs(outline), ys(outline), outline.size());
        }
    }

    private void stroke(GraphicsContext g, List<DiskSketch.Point> piece, Color colour) {
        g.setStroke(colour);
        if (piece == sketch.limb()) {
            g.strokePolygon(xs(piece), ys(piece), piece.size());
        } else {
            g.strokePolyline(xs(piece), ys(piece), piece.size());
        }
    }

    private double[] xs(List<DiskSketch.Point> points) {
        return points.stream().mapToDouble(this::x).toArray();
    }

    private double[] ys(List<DiskSketch.Point> points) {
        return points.stream().mapToDouble(this::y).toArray();
    }

    private double unit() {
        return getWidth() / (2 * reachRadii);
    }

    private double x(DiskSketch.Point p) {
        return getWidth() / 2 + unit() * (p.x() * Math.cos(angle()) + p.y() * Math.sin(angle()));
    }

    private double y(DiskSketch.Point p) {
        return getHeight() / 2 + unit() * (p.y() * Math.cos(angle()) - p.x() * Math.sin(angle()));
    }

    /** By which the drawing is turned against the sky, clockwise. */
    private double angle() {
        return northUp ? Math.atan2(sketch.pole().x(), -sketch.pole().y()) : 0;
    }
}
