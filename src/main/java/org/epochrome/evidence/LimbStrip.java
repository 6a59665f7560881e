package org.epochrome.evidence;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.colour.ColourCube;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Spline;
import org.epochrome.job.Rows;

/**
 * The limb unrolled and stretched across: along the columns the angle round the disk, along the rows the distance from the limb.
 * A band that is misaligned shows as a coloured edge whose colour changes once on the way round.
 *
 * @param columns pixels for the whole way round, from north over the sky's east
 * @param rows pixels from outside the limb to inside
 * @param reachPx how far outside and inside it begins and ends, pixels of the picture
 */
public record LimbStrip(int columns, int rows, double reachPx) {
    /** Of the way from the limb to the inner edge, where a column is taken to be white. */
    private static final double WHITE_FROM = 0.6;
    /** A column whose inside is darker than this part of the mean is night, and not lifted further. */
    private static final double NIGHT = 0.05;

    private static final double WHITE = 0.75;
    private static final double GAMMA = 1 / 2.2;

    /**
     * A place.
     *
     * @param angleDeg from the projected north pole over the sky's east
     * @param outsidePx from the limb along its normal; negative inside
     */
    public record Place(double angleDeg, double outsidePx) {}

    /** The direction and the distance at a pixel of the strip. */
    public Place at(double column, double row) {
        return new Place(360 * (column + 0.5) / columns, reachPx * (1 - 2 * (row + 0.5) / rows));
    }

    /** The row at which a distance from the limb lies. */
    public double row(double outsidePx) {
        return 0.5 * rows * (1 - outsidePx / reachPx) - 0.5;
    }

    /** A plane along the limb, by the cubic B-spline through its pixels; where it holds nothing it counts as dark. */
    public Plane sampled(Plane plane, View view) {
        Plane known = plane.copy();
        for (int i = 0; i < known.data().length; i++) {
            if (Float.isNaN(known.data()[i])) {
                known.data()[i] = 0;
            }
        }
        Spline spline = new Spline(known);
        double squaredRatio = view.globe().apparentAxisRatio() * view.globe().apparentAxisRatio();
        double radius = view.disk().equatorialRadiusPx();
        Plane strip = new Plane(columns, rows);
        Rows.each(rows, (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < columns; x++) {
                    Place place = at(x, y);
                    double angle = Math.toRadians(place.angleDeg());
                    // Growing east longitude lies to the west on the sky.
                    double side = -Math.sin(angle);
                    double pole = Math.cos(angle);
                    double stretch = 1 / view.ellipticRadius(pole, side);
                    double length = Math.hypot(pole / squaredRatio, side);
                    double out = place.outsidePx() / radius / length;
                    double overPole = pole * (stretch + out / squaredRatio);
                    double overSide = side * (stretch + out);
                    double column = view.column(overPole, overSide);
                    double row = view.row(overPole, overSide);
                    boolean inside =
                            column >= 0 && row >= 0 && column <= plane.width() - 1 && row <= plane.height() - 1;
                    strip.set(x, y, inside ? spline.at(column, row) : 0);
                }
            }
        });
        return strip;
    }

    /** A linear picture along the limb, display-encoded, each band white a little inside the limb. */
    public List<Plane> picture(ColourCube cube, View view) {
        List<Plane> shown = new ArrayList<>();
        for (Plane plane : cube.planes()) {
            Plane strip = sampled(plane, view);
            double[] inner = inner(strip);
            double mean = java.util.Arrays.stream(inner).average().orElse(1);
            for (int x = 0; x < columns; x++) {
                double white = Math.max(Math.max(inner[x], NIGHT * mean), Float.MIN_NORMAL);
                for (int y = 0; y < rows; y++) {
                    double part = Math.max(0, Math.min(1, WHITE * strip.at(x, y) / white));
                    strip.set(x, y, (float) Math.pow(part, GAMMA));
                }
            }
            shown.add(strip);
        }
        return shown;
    }

    private double[] inner(Plane strip) {
        int first = (int) Math.ceil(row(-WHITE_FROM * reachPx));
        double[] mean = new double[columns];
        for (int y = first; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                mean[x] += strip.at(x, y) / (rows - first);
            }
        }
        return mean;
    }
}
