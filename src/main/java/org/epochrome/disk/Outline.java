package org.epochrome.disk;

import java.util.ArrayList;
import java.util.List;

/**
 * Lines to draw over a picture of a globe: limb, terminator, graticule, rings. Each line is a list of places on the
 * picture's pixels, {@code {x, y}}, of the part that is seen.
 */
public final class Outline {
    private static final int FINE = 180;

    private Outline() {}

    /** The closed limb. */
    public static List<double[]> limb(View view) {
        List<double[]> line = new ArrayList<>();
        double ratio = view.globe().apparentAxisRatio();
        for (int i = 0; i <= FINE; i++) {
            double angle = 2 * Math.PI * i / FINE;
            line.add(at(view, ratio * Math.sin(angle), Math.cos(angle)));
        }
        return line;
    }

    /** Where the Sun rises or sets, as far as it is on the side that is seen. */
    public static List<List<double[]>> terminator(View view) {
        Globe g = view.globe();
        // Points whose normal is square to the Sun: a great circle in the space where the globe is a unit sphere.
        double[] sun = unit(g.sunX(), g.sunY(), g.sunZ() / g.axisRatio());
        double[] a = unit(-sun[1], sun[0], 0);
        double[] b = {sun[1] * a[2] - sun[2] * a[1], sun[2] * a[0] - sun[0] * a[2], sun[0] * a[1] - sun[1] * a[0]};
        Pen pen = new Pen(view);
        for (int i = 0; i <= FINE; i++) {
            double angle = 2 * Math.PI * i / FINE;
            double c = Math.cos(angle);
            double s = Math.sin(angle);
            pen.to(c * a[0] + s * b[0], c * a[1] + s * b[1], g.axisRatio() * (c * a[2] + s * b[2]));
        }
        return pen.lines();
    }

    /**
     * Parallels and meridians.
     *
     * @param eastOfMeridianDeg where the prime meridian lies, east of the one that faces the observer
     * @param stepDeg between lines
     */
    public static List<List<double[]>> graticule(View view, double eastOfMeridianDeg, int stepDeg) {
        Pen pen = new Pen(view);
        for (int latitude = -90 + stepDeg; latitude < 90; latitude += stepDeg) {
            for (int i = 0; i <= FINE; i++) {
                pen.to(view, Math.toRadians(latitude), 2 * Math.PI * i / FINE);
            }
            pen.lift();
        }
        for (int longitude = 0; longitude < 360; longitude += stepDeg) {
            for (int i = 0; i <= FINE / 2; i++) {
                double latitude = Math.PI * (i / (FINE / 2.0) - 0.5);
                pen.to(view, latitude, Math.toRadians(eastOfMeridianDeg + longitude));
            }
            pen.lift();
        }
        return pen.lines();
    }

    /** The equator alone. */
    public static List<List<double[]>> equator(View view) {
        Pen pen = new Pen(view);
        for (int i = 0; i <= FINE; i++) {
            pen.to(view, 0, 2 * Math.PI * i / FINE);
        }
        return pen.lines();
    }

    /** The edges of the rings, in front of the globe and beside it; none for a globe without rings. */
    public static List<List<double[]>> rings(View view) {
        Pen pen = new Pen(view);
        if (view.globe().rings().isPresent()) {
            Rings rings = view.globe().rings().get();
            double sine = Math.sin(view.globe().tilt());
            double cosine = Math.cos(view.globe().tilt());
            for (int region = 0; region < rings.regions(); region++) {
                for (double radius : new double[] {rings.inner(region), rings.outer(region)}) {
                    for (int i = 0; i <= 2 * FINE; i++) {
                        double angle = Math.PI * i / FINE;
                        double bodyX = radius * Math.cos(angle);
                        double side = radius * Math.sin(angle);
                        double pole = -sine * bodyX;
                        boolean hidden = view.depth(pole, side) > cosine * bodyX;
                        pen.place(view.column(pole, side), view.row(pole, side), !hidden);
                    }
                    pen.lift();
                }
            }
        }
        return pen.lines();
    }

    private static double[] at(View view, double pole, double side) {
        return new double[] {view.column(pole, side), view.row(pole, side)};
    }

    private static double[] unit(double x, double y, double z) {
        double length = Math.sqrt(x * x + y * y + z * z);
        return length > 0 ? new double[] {x / length, y / length, z / length} : new double[] {1, 0, 0};
    }

    /** Draws lines, lifted wherever a place is out of sight. */
    private static final class Pen {
        private final View view;
        private final List<List<double[]>> lines = new ArrayList<>();
        private List<double[]> line = new ArrayList<>();

        Pen(View view) {
            this.view = view;
        }

        void to(View on, double latitude, double east) {
            View.Place place = on.place(latitude, east);
            place(place.x(), place.y(), place.visible());
        }

        void to(double bodyX, double bodyY, double bodyZ) {
            double pole = view.poleOf(bodyX, bodyZ);
            place(view.column(pole, bodyY), view.row(pole, bodyY), view.cosEmission(bodyX, bodyY, bodyZ) > 0);
        }

        void place(double x, double y, boolean visible) {
            if (visible) {
                line.add(new double[] {x, y});
            } else {
                lift();
            }
        }

        void lift() {
            if (line.size() > 1) {
                lines.add(line);
            }
            line = new ArrayList<>();
        }

        List<List<double[]>> lines() {
            lift();
            return lines;
        }
    }
}
