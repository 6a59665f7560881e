package org.epochrome.session.diagnose;

import org.epochrome.disk.View;
import org.epochrome.image.Plane;

/**
 * What a frame shows of the globe's surface without its shading, by latitude and by longitude from the meridian that
 * faces the observer.
 */
final class DetailMap {
    /** Degrees of latitude between rows, and of longitude between columns. */
    static final double ROW_DEG = 3;

    static final double COLUMN_DEG = 1;
    static final int ROWS = 43;
    static final int COLUMNS = 151;

    /** Softening of the surface, and of what is taken off as too wide to tell where it lies, degrees. */
    private static final double FINE_DEG = 1.5;

    private static final double COARSE_DEG = 9;
    private static final double LEAST_WEIGHT = 0.05;

    private final float[] surface;
    private final float[] detail;
    private final float[] weight;

    private DetailMap(float[] surface, float[] detail, float[] weight) {
        this.surface = surface;
        this.detail = detail;
        this.weight = weight;
    }

    /**
     * The map of a frame.
     *
     * @param ratio the frame over its shading
     * @param seen 1 where that means something, else 0
     * @param view how the globe is assumed to lie in it
     */
    static DetailMap of(Plane ratio, Plane seen, View view) {
        float[] value = new float[ROWS * COLUMNS];
        float[] weight = new float[ROWS * COLUMNS];
        for (int row = 0; row < ROWS; row++) {
            double latitude = Math.toRadians(ROW_DEG * (row - ROWS / 2));
            for (int column = 0; column < COLUMNS; column++) {
                double east = Math.toRadians(COLUMN_DEG * (column - COLUMNS / 2));
                View.Place place = view.place(latitude, east);
                int x = (int) Math.floor(place.x());
                int y = (int) Math.floor(place.y());
                if (place.visible()
                        && x >= 0
                        && y >= 0
                        && x + 1 < ratio.width()
                        && y + 1 < ratio.height()
                        && seen.at(x, y) > 0
                        && seen.at(x + 1, y) > 0
                        && seen.at(x, y + 1) > 0
                        && seen.at(x + 1, y + 1) > 0) {
                    float u = (float) (place.x() - x);
                    float v = (float) (place.y() - y);
                    int at = row * COLUMNS + column;
                    value[at] = (1 - v) * ((1 - u) * ratio.at(x, y) + u * ratio.at(x + 1, y))
                            + v * ((1 - u) * ratio.at(x, y + 1) + u * ratio.at(x + 1, y + 1));
                    weight[at] = (float) Math.cos(latitude);
                }
            }
        }
        float[] fine = softened(value, weight, FINE_DEG / COLUMN_DEG);
        float[] coarse = softened(value, weight, COARSE_DEG / COLUMN_DEG);
        float[] detail = new float[fine.length];
        for (int i = 0; i < fine.length; i++) {
            detail[i] = weight[i] > 0 && coarse[i] > 0 ? fine[i] / coarse[i] - 1 : 0;
        }
        return new DetailMap(value, detail, weight);
    }

    /** Weighted means along each row with a Gaussian window. */
    private static float[] softened(float[] value, float[] weight, double columns) {
        int reach = (int) Math.ceil(3 * columns);
        double[] window = new double[reach + 1];
        for (int k = 0; k <= reach; k++) {
            window[k] = Math.exp(-0.5 * k * k / (columns * columns));
        }
        float[] result = new float[value.length];
        for (int row = 0; row < ROWS; row++) {
            for (int column = 0; column < COLUMNS; column++) {
                double sum = 0;
                double weights = 0;
                for (int k = Math.max(-reach, -column); k <= Math.min(reach, COLUMNS - 1 - column); k++) {
                    int at = row * COLUMNS + column + k;
                    double w = window[Math.abs(k)] * weight[at];
                    sum += w * value[at];
                    weights += w;
                }
                result[row * COLUMNS + column] = weights > LEAST_WEIGHT ? (float) (sum / weights) : 0;
            }
        }
        return result;
    }

    /** Relative departure from what is nearby on the same latitude. */
    float detail(int row, int column) {
        return detail[row * COLUMNS + column];
    }

    /** Weight of a place; 0 where it is not seen. */
    float weight(int row, int column) {
        return weight[row * COLUMNS + column];
    }

    /** Mean square by which the surface departs from its mean at each latitude: least where belts follow latitudes. */
    double unevenness() {
        double squares = 0;
        double all = 0;
        for (int row = 0; row < ROWS; row++) {
            double sum = 0;
            double square = 0;
            double weights = 0;
            for (int at = row * COLUMNS; at < (row + 1) * COLUMNS; at++) {
                sum += weight[at] * surface[at];
                square += weight[at] * surface[at] * surface[at];
                weights += weight[at];
            }
            if (weights > 0) {
                squares += square - sum * sum / weights;
                all += weights;
            }
        }
        return all > 0 ? squares / all : Double.NaN;
    }
}
