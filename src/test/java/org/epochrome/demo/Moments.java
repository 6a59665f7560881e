package org.epochrome.demo;

import org.epochrome.image.Plane;

/** Sum, centroid and central second moments of a picture, in pixels. */
record Moments(double sum, double x, double y, double xx, double xy, double yy) {
    static Moments of(Plane plane) {
        double sum = 0;
        double x = 0;
        double y = 0;
        for (int row = 0; row < plane.height(); row++) {
            for (int column = 0; column < plane.width(); column++) {
                double v = plane.at(column, row);
                sum += v;
                x += v * column;
                y += v * row;
            }
        }
        x /= sum;
        y /= sum;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int row = 0; row < plane.height(); row++) {
            for (int column = 0; column < plane.width(); column++) {
                double v = plane.at(column, row) / sum;
                xx += v * (column - x) * (column - x);
                xy += v * (column - x) * (row - y);
                yy += v * (row - y) * (row - y);
            }
        }
        return new Moments(sum, x, y, xx, xy, yy);
    }

    /** What a picture has more than another one. */
    static Plane difference(Plane more, Plane less) {
        Plane difference = more.copy();
        for (int i = 0; i < difference.data().length; i++) {
            difference.data()[i] -= less.data()[i];
        }
        return difference;
    }
}
