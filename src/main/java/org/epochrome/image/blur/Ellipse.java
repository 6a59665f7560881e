package org.epochrome.image.blur;

/**
 * How far offsets lie out if an ellipse is taken for a circle: the square of the distance is {@code xx dx^2 + 2 xy dx dy + yy dy^2}.
 *
 * @param xx of offsets to the right
 * @param xy of both
 * @param yy of offsets downward
 */
public record Ellipse(double xx, double xy, double yy) {
    /** A circle that is one. */
    public static final Ellipse CIRCLE = new Ellipse(1, 0, 1);

    /** Distance of an offset from the middle, pixels of the circle. */
    public double distance(double dx, double dy) {
        return Math.sqrt(Math.max(0, xx * dx * dx + 2 * xy * dx * dy + yy * dy * dy));
    }

    private double determinant() {
        return xx * yy - xy * xy;
    }

    /** Area of the ellipse, of a circle of area 1. */
    double area() {
        return 1 / Math.sqrt(determinant());
    }

    /**
     * The ellipse that has the variances of this one, of a disk, behind a blur that is round.
     *
     * @param radiusPx of the circle's disk
     * @param blurPx standard deviation
     */
    Ellipse blurred(double radiusPx, double blurPx) {
        // a disk's variance along an axis
        double disk = radiusPx * radiusPx / 4;
        double blur = blurPx * blurPx;
        double all = disk + blur;
        double byDisk = disk / (all * determinant());
        Ellipse spread = new Ellipse(byDisk * yy + blur / all, -byDisk * xy, byDisk * xx + blur / all);
        double inverse = 1 / spread.determinant();
        return new Ellipse(inverse * spread.yy, -inverse * spread.xy, inverse * spread.xx);
    }

    /** The longest of its semi-axes, of a circle of radius 1. */
    double longest() {
        double mean = 0.5 * (xx + yy);
        double least = mean - Math.hypot(0.5 * (xx - yy), xy);
        return 1 / Math.sqrt(least);
    }
}
