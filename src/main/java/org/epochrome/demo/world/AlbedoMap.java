package org.epochrome.demo.world;

import org.epochrome.job.Rows;

/**
 * A smooth albedo all over a globe: by definition the cubic B-spline whose coefficients are the cells of an
 * equirectangular grid. Frames and truth sample this one function, so no resampling stands between them.
 *
 * <p>Rows run from planetographic latitude +90 to -90, columns from east longitude 0 to 360, cell centres at half
 * steps; the spline goes on across the poles.
 */
public final class AlbedoMap {
    private static final int PAD = 2;

    private final int width;
    private final int height;
    private final int stride;
    private final float[] coefficients;

    /** Gives the coefficient of a cell. */
    @FunctionalInterface
    public interface Cells {
        public double at(double latitudeDeg, double eastLongitudeDeg);
    }

    private AlbedoMap(int width, int height, float[] paddedCoefficients) {
        this.width = width;
        this.height = height;
        this.stride = width + 2 * PAD;
        this.coefficients = paddedCoefficients;
    }

    /** A map filled cell by cell. */
    public static AlbedoMap of(int width, int height, Cells cells) {
        float[] values = new float[width * height];
        Rows.each(height, (from, to) -> {
            for (int row = from; row < to; row++) {
                for (int column = 0; column < width; column++) {
                    values[row * width + column] =
                            (float) cells.at(90 - (row + 0.5) * 180 / height, (column + 0.5) * 360 / width);
                }
            }
        });
        return of(width, height, values);
    }

    /**
     * A map over the given coefficients.
     *
     * @param width cells in longitude, even
     * @param height cells in latitude
     * @param cells row after row
     */
    static AlbedoMap of(int width, int height, float[] cells) {
        if (width < 4 || width % 2 != 0 || height < 2 || cells.length != width * height) {
            throw new IllegalArgumentException(
                    "A map of " + width + "x" + height + " cells does not fit " + cells.length + " values.");
        }
        int stride = width + 2 * PAD;
        float[] padded = new float[stride * (height + 2 * PAD)];
        for (int row = -PAD; row < height + PAD; row++) {
            boolean beyondPole = row < 0 || row >= height;
            int inside = row < 0 ? -1 - row : row >= height ? 2 * height - 1 - row : row;
            int turned = beyondPole ? width / 2 : 0;
            for (int column = -PAD; column < width + PAD; column++) {
                padded[(row + PAD) * stride + column + PAD] =
                        cells[inside * width + Math.floorMod(column + turned, width)];
            }
        }
        return new AlbedoMap(width, height, padded);
    }

    /** A map with one albedo everywhere. */
    public static AlbedoMap uniform(double albedo) {
        return of(4, 2, (latitude, longitude) -> albedo);
    }

    /** This map, times a weight, and another one of the same size, times its own weight. */
    AlbedoMap mixed(double weight, AlbedoMap other, double otherWeight) {
        if (other.width != width || other.height != height) {
            throw new IllegalArgumentException("Only maps of the same size can be mixed.");
        }
        float[] sum = new float[coefficients.length];
        for (int i = 0; i < sum.length; i++) {
            sum[i] = (float) (weight * coefficients[i] + otherWeight * other.coefficients[i]);
        }
        return new AlbedoMap(width, height, sum);
    }

    /**
     * The albedo at a point.
     *
     * @param latitude planetographic, radians
     * @param eastLongitude radians, any turn
     */
    public double at(double latitude, double eastLongitude) {
        double turns = eastLongitude / (2 * Math.PI);
        double column = (turns - Math.floor(turns)) * width - 0.5 + PAD;
        double row = (0.5 - latitude / Math.PI) * height - 0.5 + PAD;
        int c = (int) column;
        int r = (int) row;
        double u = column - c;
        double v = row - r;
        double u0 = (1 - u) * (1 - u) * (1 - u) / 6;
        double u1 = (4 + u * u * (3 * u - 6)) / 6;
        double u3 = u * u * u / 6;
        double u2 = 1 - u0 - u1 - u3;
        double v0 = (1 - v) * (1 - v) * (1 - v) / 6;
        double v1 = (4 + v * v * (3 * v - 6)) / 6;
        double v3 = v * v * v / 6;
        double v2 = 1 - v0 - v1 - v3;
        int i = (r - 1) * stride + c - 1;
        return v0 * along(i, u0, u1, u2, u3)
                + v1 * along(i + stride, u0, u1, u2, u3)
                + v2 * along(i + 2 * stride, u0, u1, u2, u3)
                + v3 * along(i + 3 * stride, u0, u1, u2, u3);
    }

    private double along(int i, double u0, double u1, double u2, double u3) {
        return u0 * coefficients[i] + u1 * coefficients[i + 1] + u2 * coefficients[i + 2] + u3 * coefficients[i + 3];
    }
}
