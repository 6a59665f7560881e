package org.epochrome.demo.world;

import org.epochrome.job.Rows;

/** Where the paint of each cell has come from: how turbulence and whirls have carried it, in degrees. */
final class Flow {
    private final Field north = Field.empty();
    private final Field east = Field.empty();

    double north(int row, int column) {
        return north.at(row, column);
    }

    double east(int row, int column) {
        return east.at(row, column);
    }

    /** Carries the paint along the contour lines of a field, as a flow without sources does. */
    void stir(Field stream, double strengthDeg, Field activity) {
        Rows.each(Field.HEIGHT, (from, to) -> {
            for (int row = from; row < to; row++) {
                int above = Math.max(row - 1, 0);
                int below = Math.min(row + 1, Field.HEIGHT - 1);
                for (int c = 0; c < Field.WIDTH; c++) {
                    int left = c > 0 ? c - 1 : Field.WIDTH - 1;
                    int right = c + 1 < Field.WIDTH ? c + 1 : 0;
                    int cell = row * Field.WIDTH + c;
                    double strength = strengthDeg * activity.at(row, c);
                    east.cells()[cell] += (float) (strength * (stream.at(above, c) - stream.at(below, c)));
                    north.cells()[cell] -= (float) (strength * (stream.at(row, right) - stream.at(row, left)));
                }
            }
        });
    }

    /** Lifts the paint by a field, up and down. */
    void heave(Field height, double strengthDeg, Field activity) {
        for (int cell = 0; cell < north.cells().length; cell++) {
            north.cells()[cell] += (float) (strengthDeg * activity.cells()[cell] * height.cells()[cell]);
        }
    }

    /** Shifts the paint sideways by a field, east and west. */
    void sway(Field shift, double strengthDeg, Field activity) {
        for (int cell = 0; cell < east.cells().length; cell++) {
            east.cells()[cell] += (float) (strengthDeg * activity.cells()[cell] * shift.cells()[cell]);
        }
    }

    /** Winds the paint around a point, counter-clockwise with north up if positive, fading outward. */
    void whirl(double latitude, double longitude, double halfHeight, double halfWidth, double turnDeg) {
        Field.around(latitude, longitude, 3 * halfHeight, 3 * halfWidth, (cell, up, right) -> {
            double y = up / halfHeight;
            double x = right / halfWidth;
            double angle = -StrictMath.toRadians(turnDeg) * StrictMath.exp(-0.7 * (x * x + y * y));
            double cos = StrictMath.cos(angle);
            double sin = StrictMath.sin(angle);
            east.cells()[cell] += (float) (halfWidth * (cos * x - sin * y - x));
            north.cells()[cell] += (float) (halfHeight * (sin * x + cos * y - y));
        });
    }

    /** Pushes the paint away from a point northward (or southward, if negative). */
    void push(Field.Brush brush, double latitude, double longitude, double halfHeight, double halfWidth, double byDeg) {
        north.paint(brush, latitude, longitude, halfHeight, halfWidth, -byDeg);
    }
}
