package org.epochrome.disk;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.epochrome.image.Plane;
import org.epochrome.image.Smear;
import org.epochrome.job.Progress;

/**
 * Finds the disk in a frame by fitting a forward model, a limb-darkened, phase-lit, blurred spheroid with simple
 * markings, by Levenberg and Marquardt's method (Marquardt 1963, J. SIAM 11, 431).
 */
public final class DiskFit {
    private static final int MOST_STEPS = 25;
    private static final double SETTLED_PX = 0.005;
    private static final double GOOD_ENOUGH_PX = 0.05;
    private static final double START_MINNAERT = 0.85;

    /** Blur that the pixels of a fit shall have at least. */
    private static final double SAMPLED_BLUR = 1.0;
    /** Radius that the disk shall have at least on the pixels of a rough fit. */
    private static final double ROUGH_RADIUS = 50;

    private final Globe globe;
    private final boolean zonal;
    private final boolean mirrored;
    private final Smear smear;
    private final OptionalDouble northDeg;
    private final OptionalDouble radiusPx;

    /**
     * @param globe aspect of the body at the middle of the recording
     * @param zonal whether the body has belts along its parallels, which then help to find the north angle
     * @param mirrored whether the frame is mirrored
     * @param smear how far dispersion draws the frame's band out
     * @param northDeg north angle if known, else it is fitted, up to 180 degrees
     * @param radiusPx equatorial radius if known, else it is fitted
     */
    public DiskFit(
            Globe globe,
            boolean zonal,
            boolean mirrored,
            Smear smear,
            OptionalDouble northDeg,
            OptionalDouble radiusPx) {
        this.globe = globe;
        this.zonal = zonal;
        this.mirrored = mirrored;
        this.smear = smear;
        this.northDeg = northDeg;
        this.radiusPx = radiusPx;
    }

    /**
     * Fits the disk.
     *
     * @throws DiskNotFound if there is no whole disk in the frame
     */
    public FittedDisk fit(Plane frame, Progress progress) {
        return refit(frame, rough(frame, progress.part(0, 0.4)), progress.part(0.4, 1));
    }

    /**
     * Fits the disk on coarse pixels: good enough to start from.
     *
     * @throws DiskNotFound if there is no whole disk in the frame
     */
    public FittedDisk rough(Plane frame, Progress progress) {
        DiskStart start = DiskStart.of(frame);
        FirstGuess guess = FirstGuess.of(start, globe, mirrored, northDeg, radiusPx);
        Shading shading = new Shading(START_MINNAERT, guess.blurPx(), smear);
        int bin = Math.max(1, (int) (guess.disk().equatorialRadiusPx() / ROUGH_RADIUS));
        return refine(frame, start, guess.disk(), shading, bin, progress);
    }

    /** Fits again from what an earlier fit found, with this fit's constraints. */
    public FittedDisk refit(Plane frame, FittedDisk earlier, Progress progress) {
        Disk disk = earlier.disk();
        if (northDeg.isPresent()) {
            disk = disk.withNorth(northDeg.getAsDouble());
        }
        if (radiusPx.isPresent()) {
            disk = disk.withRadius(radiusPx.getAsDouble());
        }
        Shading shading =
                new Shading(earlier.shading().minnaert(), earlier.shading().blurPx(), smear);
        return refine(frame, DiskStart.of(frame), disk, shading, binFor(shading), progress);
    }

    /** Pixels may be as coarse as the blur allows to see. */
    private static int binFor(Shading shading) {
        return Math.max(1, (int) (shading.blurPx() / SAMPLED_BLUR));
    }

    private FittedDisk refine(Plane frame, DiskStart start, Disk disk, Shading shading, int bin, Progress progress) {
        Crop crop = Crop.around(frame, disk, start, bin);
        Albedo albedo = new Albedo(zonal);
        double[] p = new double[DiskModel.SHAPE + albedo.size()];
        Disk inner = crop.inward(disk);
        if (globe.ringed()) {
            leaveOutRings(crop.data(), inner, shading.blurPx() / crop.bin());
        }
        p[DiskModel.X] = inner.x();
        p[DiskModel.Y] = inner.y();
        p[DiskModel.RADIUS] = inner.equatorialRadiusPx();
        p[DiskModel.NORTH] = Math.toRadians(disk.northAngleDeg());
        p[DiskModel.BELTS] = p[DiskModel.NORTH];
        p[DiskModel.MINNAERT] = shading.minnaert();
        p[DiskModel.BLUR] = shading.blurPx() / crop.bin();
        System.arraycopy(albedo.even(1), 0, p, DiskModel.SHAPE, albedo.size());
        Solution found = solve(
                new DiskModel(crop.data(), globe, mirrored, smear.on(0, 1.0 / crop.bin(), false), albedo, p),
                start.noise() / start.top() / crop.bin(),
                progress);
        return result(found, crop, start);
    }

    /** Pixels of the rings and their shadow tell nothing about the globe. */
    private void leaveOutRings(Plane data, Disk disk, double blurPx) {
        Plane cover = Rings.cover(new View(globe, disk), data.width(), data.height(), 1 + blurPx);
        for (int i = 0; i < cover.data().length; i++) {
            if (cover.data()[i] > 0.01f) {
                data.data()[i] = Float.NaN;
            }
        }
    }

    private FittedDisk result(Solution found, Crop crop, DiskStart start) {
        double[] p = found.model.parameters();
        double zoneMean = Arrays.stream(p, DiskModel.SHAPE, DiskModel.SHAPE + found.zones)
                .average()
                .orElse(1);
        return new FittedDisk(
                crop.outward(found.model.disk()).withNorth(Math.toDegrees(p[DiskModel.NORTH])),
                new Shading(p[DiskModel.MINNAERT], p[DiskModel.BLUR] * crop.bin(), smear),
                start.background() + start.top() * p[DiskModel.SKY],
                start.top() * zoneMean,
                start.noise(),
                crop.bin() * Math.sqrt(0.5 * (found.variance[DiskModel.X] + found.variance[DiskModel.Y])),
                crop.bin() * Math.sqrt(found.variance[DiskModel.RADIUS]),
                Math.toDegrees(Math.sqrt(found.variance[DiskModel.NORTH])));
    }

    private static final class Solution {
        private final DiskModel model;
        private final double[] variance;
        private final int zones;

        Solution(DiskModel model, double[] variance, int zones) {
            this.model = model;
            this.variance = variance;
            this.zones = zones;
        }
    }

    private Solution solve(DiskModel model, double noise, Progress progress) {
        int zones = new Albedo(zonal).zones();
        double damping = 1e-3;
        double[] move = null;
        for (int step = 0; step < MOST_STEPS; step++) {
            progress.check();
            progress.at(step / (double) MOST_STEPS);
            int[] pixels = model.pixels();
            double[] weights = model.weights(pixels, noise, model.markings());
            int size = model.parameters().length;
            double[][] matrix = new double[size][size];
            double[] vector = new double[size];
            model.addNormals(pixels, weights, matrix, vector);
            addPriors(model.parameters(), zones, matrix, vector);
            hold(matrix, vector);
            double misfit = model.misfit(pixels, weights) + priorMisfit(model.parameters(), zones);
            DiskModel better = null;
            while (better == null && damping < 1e4) {
                move = solve(matrix, vector, damping, null);
                DiskModel tried = model.with(moved(model.parameters(), move));
                double now = tried.misfit(pixels, weights) + priorMisfit(tried.parameters(), zones);
                if (now <= misfit * (1 + 1e-6)) {
                    better = tried;
                    damping = Math.max(1e-7, damping / 10);
                } else {
                    damping *= 10;
                }
            }
            boolean done = better == null || settled(move, SETTLED_PX);
            model = better == null ? model : better;
            // The last weights still change a little with the model: small steps to and fro are good enough in the end.
            boolean last = step == MOST_STEPS - 1;
            if ((done && step > 1) || (last && settled(move, GOOD_ENOUGH_PX))) {
                double[] variance = new double[size];
                solve(matrix, vector, 0, variance);
                scaleVariance(variance, model, pixels, weights);
                return new Solution(model, variance, zones);
            }
        }
        throw new DiskNotFound("the model of the disk does not settle on this image; check the body and the frame");
    }

    private static boolean settled(double[] move, double withinPx) {
        return Math.abs(move[DiskModel.X]) < withinPx
                && Math.abs(move[DiskModel.Y]) < withinPx
                && Math.abs(move[DiskModel.RADIUS]) < withinPx
                && Math.abs(move[DiskModel.NORTH]) < 0.02 * withinPx
                && Math.abs(move[DiskModel.BLUR]) < 2 * withinPx;
    }

    /** What is left after the fit is markings, alike over several pixels: fewer independent data than pixels. */
    private static void scaleVariance(double[] variance, DiskModel model, int[] pixels, double[] weights) {
        double perPixel = model.misfit(pixels, weights) / pixels.length;
        double blur = model.parameters()[DiskModel.BLUR];
        double alike = Math.max(1, 4 * Math.PI * blur * blur);
        for (int i = 0; i < variance.length; i++) {
            variance[i] *= perPixel * alike;
        }
    }

    /** Neighbouring zones differ by some 10 %, limb terms reach some 20 %; k lies near 0.85. */
    private static void addPriors(double[] p, int zones, double[][] matrix, double[] vector) {
        int first = DiskModel.SHAPE;
        double w = 1 / (0.1 * 0.1);
        for (int i = first; i < first + zones - 1; i++) {
            matrix[i][i] += w;
            matrix[i + 1][i + 1] += w;
            matrix[i][i + 1] -= w;
            vector[i] -= w * (p[i] - p[i + 1]);
            vector[i + 1] += w * (p[i] - p[i + 1]);
        }
        w = 1 / (0.2 * 0.2);
        for (int i = first + zones; i < p.length; i++) {
            matrix[i][i] += w;
            vector[i] -= w * p[i];
        }
        w = 1 / (0.3 * 0.3);
        matrix[DiskModel.MINNAERT][DiskModel.MINNAERT] += w;
        vector[DiskModel.MINNAERT] -= w * (p[DiskModel.MINNAERT] - START_MINNAERT);
    }

    private static double priorMisfit(double[] p, int zones) {
        int first = DiskModel.SHAPE;
        double sum = square((p[DiskModel.MINNAERT] - START_MINNAERT) / 0.3);
        for (int i = first; i < first + zones - 1; i++) {
            sum += square((p[i] - p[i + 1]) / 0.1);
        }
        for (int i = first + zones; i < p.length; i++) {
            sum += square(p[i] / 0.2);
        }
        return sum;
    }

    private static double square(double v) {
        return v * v;
    }

    /** Takes parameters that are given out of the equations. */
    private void hold(double[][] matrix, double[] vector) {
        if (northDeg.isPresent()) {
            hold(DiskModel.NORTH, matrix, vector);
        }
        if (!zonal) {
            hold(DiskModel.BELTS, matrix, vector);
        }
        if (radiusPx.isPresent()) {
            hold(DiskModel.RADIUS, matrix, vector);
        }
    }

    private static void hold(int index, double[][] matrix, double[] vector) {
        for (int i = 0; i < vector.length; i++) {
            matrix[Math.min(i, index)][Math.max(i, index)] = 0;
        }
        matrix[index][index] = 1e30;
        vector[index] = 0;
    }

    /** Solves the damped normal equations; also fills the variances if asked. */
    private static double[] solve(double[][] upper, double[] vector, double damping, double[] variance) {
        int n = vector.length;
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            scale[i] = 1 / Math.sqrt(Math.max(upper[i][i], 1e-12));
        }
        RealMatrix matrix = new Array2DRowRealMatrix(n, n);
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            for (int j = i; j < n; j++) {
                double v = upper[i][j] * scale[i] * scale[j] + (i == j ? damping + 1e-10 : 0);
                matrix.setEntry(i, j, v);
                matrix.setEntry(j, i, v);
            }
            right[i] = vector[i] * scale[i];
        }
        try {
            CholeskyDecomposition cholesky = new CholeskyDecomposition(matrix, 1e-9, 1e-14);
            if (variance != null) {
                RealMatrix inverse = cholesky.getSolver().getInverse();
                for (int i = 0; i < n; i++) {
                    variance[i] = inverse.getEntry(i, i) * scale[i] * scale[i];
                }
            }
            double[] step = cholesky.getSolver()
                    .solve(new ArrayRealVector(right, false))
                    .toArray();
            for (int i = 0; i < n; i++) {
                step[i] *= scale[i];
            }
            return step;
        } catch (NonPositiveDefiniteMatrixException e) {
            return new double[n];
        }
    }

    /** The parameters after a step, held where the model has a meaning. */
    private static double[] moved(double[] p, double[] move) {
        double[] q = p.clone();
        double most = 0.1 * p[DiskModel.RADIUS];
        move[DiskModel.X] = clamp(move[DiskModel.X], -most, most);
        move[DiskModel.Y] = clamp(move[DiskModel.Y], -most, most);
        move[DiskModel.RADIUS] = clamp(move[DiskModel.RADIUS], -most, most);
        move[DiskModel.NORTH] = clamp(move[DiskModel.NORTH], -0.1, 0.1);
        move[DiskModel.BELTS] = clamp(move[DiskModel.BELTS], -0.1, 0.1);
        for (int i = 0; i < q.length; i++) {
            q[i] += move[i];
        }
        q[DiskModel.MINNAERT] = clamp(q[DiskModel.MINNAERT], 0.3, 1.3);
        q[DiskModel.BLUR] = clamp(q[DiskModel.BLUR], Math.max(0.4, 0.6 * p[DiskModel.BLUR]), 1.6 * p[DiskModel.BLUR]);
        return q;
    }

    private static double clamp(double v, double least, double most) {
        return Math.max(least, Math.min(most, v));
    }
}
