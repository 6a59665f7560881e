package org.epochrome.evidence.plan;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.evidence.Markup;
import org.epochrome.plan.drawing.DiskSketch;
import org.epochrome.plan.drawing.DiskSketch.Point;
import org.epochrome.plan.drawing.DiskSketch.Spot;

/** The disk with graticule, rings and moons, and below it all moons on a smaller scale. */
final class DiskDrawing {
    private static final double SIDE = 240;
    private static final double STRIP = 48;
    /** What the strip shows, equatorial radii from the centre: Callisto's orbit. */
    private static final double STRIP_RADII = 28;

    private static final double LEAST_SPOT_PX = 1.6;

    private final DiskSketch sketch;
    private final double radius;
    private final List<Markup> out = new ArrayList<>();

    /** @param reach what is shown, equatorial radii from the centre */
    private DiskDrawing(DiskSketch sketch, double reach) {
        this.sketch = sketch;
        this.radius = SIDE / 2 / reach;
    }

    static Markup of(DiskSketch sketch, double reach, String title) {
        return new DiskDrawing(sketch, reach).draw(title);
    }

    private Markup draw(String title) {
        out.add(Svg.area("globe", on(sketch.limb())));
        if (!sketch.night().isEmpty()) {
            out.add(Svg.area("night", on(sketch.night())));
        }
        sketch.graticule().forEach(line -> out.add(Svg.curve("graticule", on(line))));
        sketch.rings().forEach(line -> out.add(Svg.curve("ring", on(line))));
        Point pole = sketch.pole();
        double length = Math.hypot(pole.x(), pole.y());
        double end = 1 + 0.14 / Math.max(0.05, length);
        out.add(Svg.line("pole", x(pole.x()), y(pole.y()), x(pole.x() * end), y(pole.y() * end)));
        for (Spot spot : sketch.spots()) {
            spot(spot);
        }
        out.add(Svg.label("axis", SIDE / 2, 11, "middle", "N"));
        out.add(Svg.label("axis", 4, SIDE / 2 + 4, "start", "E"));
        boolean moons = !sketch.spots().isEmpty();
        if (moons) {
            strip();
        }
        return Svg.drawing(SIDE, SIDE + (moons ? STRIP : 0), title, out);
    }

    private void spot(Spot spot) {
        double x = x(spot.at().x());
        double y = y(spot.at().y());
        if (x < 0 || x > SIDE || y < 0 || y > SIDE) {
            return;
        }
        double r = Math.max(LEAST_SPOT_PX, spot.radius() * radius);
        out.add(Svg.circle(spot.shadow() ? "shadow" : spot.seen() ? "moonspot" : "hidden", x, y, r));
        if (!spot.shadow()) {
            out.add(Svg.label("axis", x, y - r - 3, "middle", spot.name()));
        }
    }

    /** With the planet's equator level. */
    private void strip() {
        double middle = SIDE + STRIP / 3;
        double scale = SIDE / 2 / STRIP_RADII;
        Point pole = sketch.pole();
        double length = Math.hypot(pole.x(), pole.y());
        out.add(Svg.line("grid", 0, middle, SIDE, middle));
        out.add(Svg.circle("globe", SIDE / 2, middle, scale));
        for (Spot spot : sketch.spots()) {
            if (!spot.shadow()) {
                double along = (spot.at().y() * pole.x() - spot.at().x() * pole.y()) / length;
                double north = (spot.at().x() * pole.x() + spot.at().y() * pole.y()) / length;
                double x = SIDE / 2 + scale * along;
                out.add(Svg.circle(spot.seen() ? "moonspot" : "hidden", x, middle - scale * north, LEAST_SPOT_PX));
                out.add(Svg.label(
                        "axis", x, SIDE + STRIP - 4, "middle", spot.name().substring(0, 1)));
            }
        }
    }

    private List<double[]> on(List<Point> points) {
        return points.stream().map(p -> new double[] {x(p.x()), y(p.y())}).toList();
    }

    private double x(double radii) {
        return SIDE / 2 + radius * radii;
    }

    private double y(double radii) {
        return SIDE / 2 + radius * radii;
    }
}
