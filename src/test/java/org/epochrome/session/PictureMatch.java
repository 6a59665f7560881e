package org.epochrome.session;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.image.Plane;

/**
 * How one plane of a result compares with the truth, by first-order least squares: {@code result = gain * truth + offset -
 * gain * shift . gradient(truth)} over the inner disk. Shares no code with the engine.
 *
 * @param shiftX displacement of the result's markings to the right, pixels
 * @param shiftY the same downward
 * @param error rms of what is left without any shift, relative to the truth
 */
record PictureMatch(double shiftX, double shiftY, double error) {
    private static final double INNER = 0.8;

    static PictureMatch of(Plane result, Plane truth, TrueDisk disk) {
        int n = count(truth, disk);
        double[][] rows = new double[n][];
        double[] right = new double[n];
        int k = 0;
        for (int y = 1; y < truth.height() - 1; y++) {
            for (int x = 1; x < truth.width() - 1; x++) {
                if (inside(x, y, truth, disk)) {
                    double t = truth.at(x, y);
                    double gx = 0.5 * (truth.at(x + 1, y) - truth.at(x - 1, y));
                    double gy = 0.5 * (truth.at(x, y + 1) - truth.at(x, y - 1));
                    rows[k] = new double[] {1, 1 / t, -gx / t, -gy / t};
                    right[k++] = result.at(x, y) / t;
                }
            }
        }
        double[] p = solve(rows, right);
        double[][] plain = new double[n][];
        for (int i = 0; i < n; i++) {
            plain[i] = new double[] {rows[i][0], rows[i][1]};
        }
        double[] q = solve(plain, right);
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double left = (right[i] - q[0] * plain[i][0] - q[1] * plain[i][1]) / q[0];
            sum += left * left;
        }
        return new PictureMatch(p[2] / p[0], p[3] / p[0], Math.sqrt(sum / n));
    }

    private static double[] solve(double[][] rows, double[] right) {
        return new QRDecomposition(new Array2DRowRealMatrix(rows, false))
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
    }

    private static int count(Plane truth, TrueDisk disk) {
        int n = 0;
        for (int y = 1; y < truth.height() - 1; y++) {
            for (int x = 1; x < truth.width() - 1; x++) {
                n += inside(x, y, truth, disk) ? 1 : 0;
            }
        }
        return n;
    }

    private static boolean inside(int x, int y, Plane truth, TrueDisk disk) {
        double r = Math.hypot(x - disk.x(), y - disk.y()) / disk.equatorialRadiusPx();
        return r < INNER && truth.at(x, y) > 0.25 * truth.at((int) disk.x(), (int) disk.y());
    }
}
