package org.epochrome.demo.world;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.epochrome.job.Rows;

/** A number for every cell of the grid that surfaces are painted on; the paints and brushes of the invented worlds. */
final class Field {
    /** Cells of 0.156 degrees, so that detail goes down to about 0.3 degrees. */
    static final int WIDTH = 2304;

    static final int HEIGHT = 1152;

    /** Elliptic distance beyond which a brush leaves next to nothing. */
    private static final double BRUSH_REACH = 3;

    private final float[] cells;

    private Field(float[] cells) {
        this.cells = cells;
    }

    static Field empty() {
        return new Field(new float[WIDTH * HEIGHT]);
    }

    /** A field that depends on the latitude alone. */
    static Field byLatitude(DoubleUnaryOperator ofLatitudeDeg) {
        Field field = empty();
        for (int row = 0; row < HEIGHT; row++) {
            float value = (float) ofLatitudeDeg.applyAsDouble(latitudeDeg(row));
            Arrays.fill(field.cells, row * WIDTH, (row + 1) * WIDTH, value);
        }
        return field;
    }

    static double latitudeDeg(int row) {
        return 90 - (row + 0.5) * 180 / HEIGHT;
    }

    static double longitudeDeg(int column) {
        return (column + 0.5) * 360 / WIDTH;
    }

    /** The shorter way from one longitude to another, -180 to 180 degrees. */
    static double turnDeg(double fromDeg, double toDeg) {
        double turn = toDeg - fromDeg;
        return turn - 360 * Math.rint(turn / 360);
    }

    float at(int row, int column) {
        return cells[row * WIDTH + column];
    }

    /** The value at any latitude and east longitude, interpolated linearly. */
    float at(double latitudeDeg, double longitudeDeg) {
        double row = Math.min(HEIGHT - 1.001, Math.max(0, (90 - latitudeDeg) * HEIGHT / 180 - 0.5));
        double column = longitudeDeg * WIDTH / 360 - 0.5;
        double wholeColumns = Math.floor(column);
        int r = (int) row;
        int c = Math.floorMod((int) wholeColumns, WIDTH);
        int next = c + 1 < WIDTH ? c + 1 : 0;
        float v = (float) (row - r);
        float u = (float) (column - wholeColumns);
        int i = r * WIDTH;
        float upper = cells[i + c] * (1 - u) + cells[i + next] * u;
        float lower = cells[i + WIDTH + c] * (1 - u) + cells[i + WIDTH + next] * u;
        return upper * (1 - v) + lower * v;
    }

    /**
     * A random field like clouds, zero mean, unit variance. Noise is thrown on a coarse grid, which is refined again
     * and again by the two-scale relation of the cubic B-spline, with weaker noise thrown on each finer grid.
     *
     * @param columns of the coarse grid, 9 times a power of two: structures are 360 degrees over this long at most
     * @param rows of the coarse grid, likewise; fewer columns than twice the rows stretch the structures in longitude
     * @param persistence strength of each grid's noise over that of the coarser one
     */
    static Field clouds(Dice dice, int columns, int rows, double persistence) {
        int w = columns;
        int h = rows;
        float[] values = new float[w * h];
        double strength = 1;
        throwNoise(values, w, dice.fork(w), strength);
        while (w < WIDTH || h < HEIGHT) {
            boolean bothWays = w < WIDTH && h < HEIGHT;
            if (w < WIDTH) {
                values = refinedAlong(values, w, h);
                w *= 2;
            }
            if (h < HEIGHT) {
                values = refinedDown(values, w, h);
                h *= 2;
            }
            if (bothWays) {
                strength *= persistence;
                throwNoise(values, w, dice.fork(w), strength);
            }
        }
        return new Field(normalised(values));
    }

    private static void throwNoise(float[] values, int width, Dice dice, double strength) {
        Rows.each(values.length / width, (from, to) -> {
            for (int i = from * width; i < to * width; i++) {
                values[i] += (float) strength * dice.nearlyNormal(i);
            }
        });
    }

    private static float[] refinedAlong(float[] values, int width, int height) {
        float[] fine = new float[2 * values.length];
        Rows.each(height, (from, to) -> {
            for (int row = from; row < to; row++) {
                int start = row * width;
                for (int c = 0; c < width; c++) {
                    float left = values[start + (c > 0 ? c - 1 : width - 1)];
                    float here = values[start + c];
                    float right = values[start + (c + 1 < width ? c + 1 : 0)];
                    fine[2 * (start + c)] = 0.125f * (left + 6 * here + right);
                    fine[2 * (start + c) + 1] = 0.5f * (here + right);
                }
            }
        });
        return fine;
    }

    private static float[] refinedDown(float[] values, int width, int height) {
        float[] fine = new float[2 * values.length];
        Rows.each(height, (from, to) -> {
            for (int row = from; row < to; row++) {
                int above = Math.max(row - 1, 0) * width;
                int below = Math.min(row + 1, height - 1) * width;
                for (int c = 0; c < width; c++) {
                    float here = values[row * width + c];
                    float under = values[below + c];
                    fine[2 * row * width + c] = 0.125f * (values[above + c] + 6 * here + under);
                    fine[(2 * row + 1) * width + c] = 0.5f * (here + under);
                }
            }
        });
        return fine;
    }

    private static float[] normalised(float[] values) {
        double sum = 0;
        double squares = 0;
        for (float value : values) {
            sum += value;
            squares += (double) value * value;
        }
        double mean = sum / values.length;
        double scale = 1 / Math.sqrt(squares / values.length - mean * mean);
        for (int i = 0; i < values.length; i++) {
            values[i] = (float) ((values[i] - mean) * scale);
        }
        return values;
    }

    /** What a brush leaves at an elliptic distance from its middle, 1 being the given half axes. */
    @FunctionalInterface
    interface Brush {
        double at(double distance);
    }

    /** A soft round dab. */
    static final Brush DAB = distance -> StrictMath.exp(-distance * distance);

    /** A spot with a flat middle and a soft edge. */
    static final Brush SPOT = distance -> StrictMath.exp(-distance * distance * distance * distance);

    /** A rim around a spot. */
    static final Brush RIM = distance -> StrictMath.exp(-(distance - 1.25) * (distance - 1.25) * 16);

    /** Adds a brush stroke around a point; the half axes are in degrees of latitude and longitude. */
    void paint(Brush brush, double latitude, double longitude, double halfHeight, double halfWidth, double strength) {
        around(latitude, longitude, BRUSH_REACH * halfHeight, BRUSH_REACH * halfWidth, (cell, north, east) -> {
            double distance =
                    Math.sqrt(north * north / (halfHeight * halfHeight) + east * east / (halfWidth * halfWidth));
            if (distance < BRUSH_REACH) {
                cells[cell] += (float) (strength * brush.at(distance));
            }
        });
    }

    /** Does something to the cells of a window, each for itself; offsets from its middle are in degrees, north and east positive. */
    @FunctionalInterface
    interface OnCell {
        void at(int cell, double north, double east);
    }

    static void around(double latitude, double longitude, double reachNorth, double reachEast, OnCell work) {
        int top = Math.max(0, (int) Math.floor((90 - latitude - reachNorth) * HEIGHT / 180));
        int bottom = Math.min(HEIGHT - 1, (int) Math.ceil((90 - latitude + reachNorth) * HEIGHT / 180));
        int half = Math.min(WIDTH / 2 - 1, (int) Math.ceil(reachEast * WIDTH / 360));
        int middle = (int) Math.floor(longitude * WIDTH / 360);
        Rows.each(bottom - top + 1, (from, to) -> {
            for (int row = top + from; row < top + to; row++) {
                for (int c = middle - half; c <= middle + half; c++) {
                    int column = Math.floorMod(c, WIDTH);
                    double north = latitudeDeg(row) - latitude;
                    work.at(row * WIDTH + column, north, turnDeg(longitude, longitudeDeg(column)));
                }
            }
        });
    }

    /** What maps are made of, cell by cell: the albedo in red, green and blue. */
    @FunctionalInterface
    interface Painter {
        void paint(int row, int column, double[] albedo);
    }

    /** Maps on this grid. */
    static Surface surface(Painter painter) {
        float[][] cells = new float[3][WIDTH * HEIGHT];
        Rows.each(HEIGHT, (from, to) -> {
            double[] albedo = new double[3];
            for (int row = from; row < to; row++) {
                for (int column = 0; column < WIDTH; column++) {
                    painter.paint(row, column, albedo);
                    for (int k = 0; k < 3; k++) {
                        cells[k][row * WIDTH + column] = (float) albedo[k];
                    }
                }
            }
        });
        return new Surface(
                AlbedoMap.of(WIDTH, HEIGHT, cells[0]),
                AlbedoMap.of(WIDTH, HEIGHT, cells[1]),
                AlbedoMap.of(WIDTH, HEIGHT, cells[2]));
    }

    float[] cells() {
        return cells;
    }
}
