package org.epochrome.demo.world;

/** The colours of a banded planet by latitude, and how turbulent it is there. */
final class Palette {
    private static final int STEPS_PER_DEGREE = 20;

    private final float[][] table = new float[4][180 * STEPS_PER_DEGREE + 1];

    /** @param stripes from south to north: latitude, red, green, blue, activity; smooth in between */
    Palette(double[][] stripes) {
        int at = 0;
        for (int i = 0; i < table[0].length; i++) {
            double latitude = -90 + (double) i / STEPS_PER_DEGREE;
            while (at < stripes.length - 2 && latitude > stripes[at + 1][0]) {
                at++;
            }
            double[] south = stripes[at];
            double[] north = stripes[at + 1];
            double t = (latitude - south[0]) / (north[0] - south[0]);
            double smooth = t * t * (3 - 2 * t);
            for (int k = 0; k < 4; k++) {
                table[k][i] = (float) (south[k + 1] + (north[k + 1] - south[k + 1]) * smooth);
            }
        }
    }

    /** Red (0), green (1) or blue (2) albedo at a latitude; beyond the poles that of the pole. */
    double colour(int which, double latitudeDeg) {
        return lookup(table[which], latitudeDeg);
    }

    double activity(double latitudeDeg) {
        return lookup(table[3], latitudeDeg);
    }

    private static double lookup(float[] column, double latitudeDeg) {
        double place = Math.min(180, Math.max(0, latitudeDeg + 90)) * STEPS_PER_DEGREE;
        int i = Math.min((int) place, column.length - 2);
        double t = place - i;
        return column[i] * (1 - t) + column[i + 1] * t;
    }
}
