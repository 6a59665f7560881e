package org.epochrome.desktop.picture;

import java.util.List;
import java.util.Set;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.text.TextAlignment;
import org.epochrome.desktop.state.LimbHandles;
import org.epochrome.desktop.state.Zoom;
import org.epochrome.desktop.style.Palette;
import org.epochrome.desktop.style.Texts;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Outline;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Band;
import org.epochrome.session.recipe.PixelOffset;
import org.epochrome.session.schedule.FrameOrientation;

/** Draws lines of a globe over its picture. */
public final class OverlayPainter {
    private static final Color SHADOW = Color.color(0, 0, 0, 0.55);
    private static final int STEP_DEG = 15;
    private static final double ENLARGED = 10;
    private static final double HANDLE = 5;
    /** How far beyond the end of a line its name stands. */
    private static final double BESIDE = 11;

    private static final double HALF_LINE = 9;

    private final GraphicsContext pen;
    private final Zoom zoom;
    private final Palette palette;

    OverlayPainter(GraphicsContext pen, Zoom zoom, Palette palette) {
        this.pen = pen;
        this.zoom = zoom;
        this.palette = palette;
        pen.setLineCap(StrokeLineCap.ROUND);
    }

    /** A predicted shift of a band. */
    public record Vector(Band band, PixelOffset shift) {}

    void draw(Set<Overlay> wanted, Aspect aspect, Disk disk, RotationSystem system, List<Vector> dispersion) {
        View view = new View(Globe.of(aspect), disk);
        if (wanted.contains(Overlay.GRATICULE)) {
            double prime = FrameOrientation.primeMeridianEastDeg(aspect, system);
            lines(Outline.graticule(view, prime, STEP_DEG), palette.line().deriveColor(0, 1, 1, 0.45), 0.8);
            lines(Outline.equator(view), palette.line().deriveColor(0, 1, 1, 0.8), 1.4);
        }
        if (wanted.contains(Overlay.RINGS)) {
            lines(Outline.rings(view), palette.line().deriveColor(0, 1, 1, 0.7), 1);
        }
        if (wanted.contains(Overlay.TERMINATOR)) {
            lines(Outline.terminator(view), palette.warm(), 1.4);
        }
        if (wanted.contains(Overlay.LIMB)) {
            lines(List.of(Outline.limb(view)), palette.accent(), 1.4);
        }
        if (wanted.contains(Overlay.ARROWS)) {
            arrow(disk, disk.northAngleDeg(), Texts.of("picture.north"), palette.accent());
            FrameOrientation.zenithDeg(aspect, disk)
                    .ifPresent(angle -> arrow(disk, angle, Texts.of("picture.zenith"), palette.warm()));
        }
        if (wanted.contains(Overlay.DISPERSION)) {
            for (Vector v : dispersion) {
                double x = zoom.viewX(disk.x());
                double y = zoom.viewY(disk.y());
                double toX = x + ENLARGED * zoom.scale() * v.shift().x();
                double toY = y + ENLARGED * zoom.scale() * v.shift().y();
                // Under the red shade filters have no colours.
                Color colour = palette.equals(Palette.RED)
                        ? palette.line()
                        : palette.of(v.band().passband());
                stroke(x, y, toX, toY, colour, 2);
                double length = Math.max(1, Math.hypot(toX - x, toY - y));
                text(v.band().name(), toX + BESIDE * (toX - x) / length, toY + BESIDE * (toY - y) / length, colour);
            }
        }
    }

    /** Lines of longitude and latitude every 30 degrees on a map. */
    void grid(double width, double height) {
        pen.setStroke(palette.line().deriveColor(0, 1, 1, 0.4));
        pen.setLineWidth(1);
        for (int deg = 0; deg <= 360; deg += 30) {
            double x = Math.round(zoom.viewX(width * deg / 360 - 0.5)) + 0.5;
            pen.strokeLine(x, zoom.viewY(-0.5), x, zoom.viewY(height - 0.5));
            if (deg <= 180) {
                double y = Math.round(zoom.viewY(height * deg / 180 - 0.5)) + 0.5;
                pen.strokeLine(zoom.viewX(-0.5), y, zoom.viewX(width - 0.5), y);
            }
        }
    }

    /** The edge of a picture. */
    void edge(double width, double height) {
        pen.setStroke(palette.line().deriveColor(0, 1, 1, 0.6));
        pen.setLineWidth(1);
        pen.strokeRect(
                Math.floor(zoom.left()) - 0.5,
                Math.floor(zoom.top()) - 0.5,
                Math.ceil(zoom.scale() * width) + 1,
                Math.ceil(zoom.scale() * height) + 1);
    }

    /** A line across the picture at a row, and its name at the right end. */
    void across(double row, double width, String name) {
        double y = Math.round(zoom.viewY(row)) + 0.5;
        double right = zoom.viewX(width - 0.5);
        pen.setStroke(palette.accent().deriveColor(0, 1, 1, 0.8));
        pen.setLineWidth(1);
        pen.strokeLine(zoom.left(), y, right, y);
        text(name, right + 20, y, palette.accent());
    }

    /** A name left of a place. */
    void mark(double x, double y, String name) {
        text(name, zoom.viewX(x) - 26, zoom.viewY(y), palette.line());
    }

    /** A name below a place, with a tick. */
    void below(double x, double y, String name) {
        double at = Math.round(zoom.viewX(x)) + 0.5;
        double from = zoom.viewY(y);
        pen.setStroke(palette.line());
        pen.setLineWidth(1);
        pen.strokeLine(at, from, at, from + 5);
        text(name, at, from + 14, palette.line());
    }

    /** A limb curve with its handles. */
    void handles(LimbHandles handles, boolean held) {
        Color colour = held ? palette.warm() : palette.accent();
        lines(List.of(Outline.limb(new View(handles.globe(), handles.disk()))), colour, 1.6);
        Disk disk = handles.disk();
        for (LimbHandles.Handle h : handles.handles()) {
            double x = zoom.viewX(h.x());
            double y = zoom.viewY(h.y());
            if (h.grip() == LimbHandles.Grip.POLE) {
                stroke(zoom.viewX(disk.x()), zoom.viewY(disk.y()), x, y, colour.deriveColor(0, 1, 1, 0.5), 1);
                text(Texts.of("picture.north"), x + 12, y, colour);
            }
            pen.setFill(SHADOW);
            pen.fillOval(x - HANDLE - 1.5, y - HANDLE - 1.5, 2 * HANDLE + 3, 2 * HANDLE + 3);
            pen.setFill(colour);
            pen.fillOval(x - HANDLE, y - HANDLE, 2 * HANDLE, 2 * HANDLE);
        }
    }

    private void arrow(Disk disk, double angleDeg, String label, Color colour) {
        double angle = Math.toRadians(angleDeg);
        double dx = -Math.sin(angle);
        double dy = -Math.cos(angle);
        double radius = zoom.scale() * disk.equatorialRadiusPx();
        double x = zoom.viewX(disk.x());
        double y = zoom.viewY(disk.y());
        double from = 1.03 * radius + 4;
        double to = from + Math.max(9, Math.min(30, 0.12 * radius));
        stroke(x + from * dx, y + from * dy, x + to * dx, y + to * dy, colour, 2);
        for (double side : new double[] {-0.5, 0.5}) {
            double back = angle + Math.PI + side;
            stroke(
                    x + to * dx,
                    y + to * dy,
                    x + to * dx - 8 * Math.sin(back),
                    y + to * dy - 8 * Math.cos(back),
                    colour,
                    2);
        }
        text(label, x + (to + 16) * dx, y + (to + 12) * dy, colour);
    }

    /** Written around a place, or as near to it as the view has room. */
    private void text(String text, double wantedX, double wantedY, Color colour) {
        double halfWidth = 4.0 * text.length();
        double x = within(wantedX, halfWidth, pen.getCanvas().getWidth() - halfWidth);
        double y = within(wantedY, HALF_LINE, pen.getCanvas().getHeight() - HALF_LINE);
        pen.setTextAlign(TextAlignment.CENTER);
        pen.setTextBaseline(VPos.CENTER);
        pen.setStroke(SHADOW);
        pen.setLineWidth(3);
        pen.strokeText(text, x, y);
        pen.setFill(colour);
        pen.fillText(text, x, y);
    }

    private static double within(double value, double from, double to) {
        return Math.max(from, Math.min(to, value));
    }

    private void stroke(double x, double y, double toX, double toY, Color colour, double width) {
        pen.setStroke(SHADOW);
        pen.setLineWidth(width + 2);
        pen.strokeLine(x, y, toX, toY);
        pen.setStroke(colour);
        pen.setLineWidth(width);
        pen.strokeLine(x, y, toX, toY);
    }

    private void lines(List<List<double[]>> lines, Color colour, double width) {
        pen.setStroke(colour);
        pen.setLineWidth(width);
        for (List<double[]> line : lines) {
            pen.beginPath();
            for (int i = 0; i < line.size(); i++) {
                double x = zoom.viewX(line.get(i)[0]);
                double y = zoom.viewY(line.get(i)[1]);
                if (i == 0) {
                    pen.moveTo(x, y);
                } else {
                    pen.lineTo(x, y);
                }
            }
            pen.stroke();
        }
    }
}
