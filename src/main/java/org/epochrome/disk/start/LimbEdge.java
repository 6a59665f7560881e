package org.epochrome.disk.start;

import java.util.Arrays;
import java.util.Optional;
import org.epochrome.disk.Disk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.View;
import org.epochrome.disk.solve.Skyline;
import org.epochrome.image.Plane;

/**
 * The limb as the steepest edge of the light: the planet's outline through the places where brightness falls fastest along rays
 * from the centre. It knows nothing of shading, sky, halo or encoding, so it is coarse, and hardly led astray.
 *
 * @param disk the disk with that outline, its direction as it was given
 * @param centreSigmaPx standard error of the centre, per axis, by the scatter of the edge about the outline
 */
public record LimbEdge(Disk disk, double centreSigmaPx) {
    private static final int RAYS = 180;
    /** Nearest and farthest place looked at, as parts of the outline. */
    private static final double NEAREST = 0.55;

    private static final double FARTHEST = 1.6;
    /** Half of the length over which a slope is taken, as a part of the radius, and at least. */
    private static final double HALF_SLOPE = 0.02;

    private static final double LEAST_HALF_SLOPE_PX = 1.5;
    /** Sine of the phase angle from which the outline shows on the lit side only, and the part of it that limbs must have. */
    private static final double CLEAR_PHASE = 0.05;

    private static final double LIT = 0.15;
    /** So much of the limb must be seen, in rays. */
    private static final int LEAST_RAYS = 40;

    /** Light that is lost in the sky's noise, as a part of the disk's. */
    private static final double FAINT = 0.01;
    /** Part of the steepest fall that an edge farther out must have. */
    private static final double STEEP = 0.6;
    /** Part of the radius by which markings, terminators and shadows may move the edge's centre, and its standard errors. */
    private static final double ASTRAY = 0.04;

    private static final double SURE = 3;

    private static final int ROUNDS = 10;
    private static final int REWEIGHTINGS = 12;
    private static final double SETTLED_PX = 0.02;
    /** Residuals beyond so many standard deviations do not count (Beaton and Tukey 1974, Technometrics 16, 147). */
    private static final double BIWEIGHT = 4.685;
    /** A smaller scatter is chance. */
    private static final double LEAST_SCATTER_PX = 0.05;
    /** Neighbouring rays that share one error: markings at the limb are some ten degrees long. */
    private static final double ALIKE = 5;

    /**
     * Finds the outline.
     *
     * @param levels of the frame
     * @param start where to look from; its radius may be wrong by a third, its centre by a third of the radius
     * @param radiusKnown whether the radius is to stay
     * @return empty where too little of the limb is seen, and for a globe with rings, which have edges of their own
     */
    public static Optional<LimbEdge> of(Plane frame, Levels levels, Globe globe, Disk start, boolean radiusKnown) {
        if (globe.ringed()) {
            return Optional.empty();
        }
        Disk disk = start;
        Plane evened = evened(frame, levels);
        for (int round = 1; ; round++) {
            Rays rays = Rays.of(evened, new View(globe, disk));
            if (rays.count < LEAST_RAYS) {
                return Optional.empty();
            }
            double sigma = rays.fit(radiusKnown);
            double radius = disk.equatorialRadiusPx() + rays.move[2];
            double grown = radius / start.equatorialRadiusPx();
            if (!(grown > NEAREST && grown < FARTHEST)) {
                return Optional.empty();
            }
            disk = disk.movedBy(rays.move[0], rays.move[1]).withRadius(radius);
            double length = Math.hypot(rays.move[0], rays.move[1]);
            if (length < SETTLED_PX || round == ROUNDS) {
                return Optional.of(new LimbEdge(disk, Math.hypot(sigma, length)));
            }
        }
    }

    /**
     * Whether a fitted disk lies where this one does, as far as the edge can tell.
     *
     * @param smearPx how far dispersion carries light within the frame: the steepest edge may lie at either end
     */
    public boolean agrees(Disk fitted, double smearPx) {
        double away = Math.hypot(fitted.x() - disk.x(), fitted.y() - disk.y());
        return away < ASTRAY * disk.equatorialRadiusPx() + smearPx + SURE * centreSigmaPx;
    }

    /** The root of the light above the sky: belts then fall less than the limb, which is darkened. */
    private static Plane evened(Plane frame, Levels levels) {
        Plane result = new Plane(frame.width(), frame.height());
        for (int i = 0; i < result.data().length; i++) {
            double light = (frame.data()[i] - levels.background()) / levels.top();
            result.data()[i] = (float) Math.sqrt(Math.max(0, light) + FAINT);
        }
        return result;
    }

    /** By how many pixels the edge lies outside an outline, along the rays that show it. */
    private static final class Rays {
        private final double[] off = new double[RAYS];
        /** Derivatives by the centre, right and down, and by the radius. */
        private final double[][] slopes = new double[RAYS][];

        private final double[] move = new double[3];
        private int count;

        static Rays of(Plane frame, View view) {
            Rays rays = new Rays();
            double ratio = view.globe().apparentAxisRatio();
            Disk disk = view.disk();
            for (int i = 0; i < RAYS; i++) {
                double pole = ratio * Math.sin(2 * Math.PI * i / RAYS);
                double side = Math.cos(2 * Math.PI * i / RAYS);
                double right = view.column(pole, side) - disk.x();
                double down = view.row(pole, side) - disk.y();
                double edge = isLit(view, pole, side) ? steepest(frame, disk, right, down) : Double.NaN;
                if (!Double.isNaN(edge)) {
                    double normalRight = view.column(pole / (ratio * ratio), side) - disk.x();
                    double normalDown = view.row(pole / (ratio * ratio), side) - disk.y();
                    double length = Math.hypot(normalRight, normalDown);
                    double support = (right * normalRight + down * normalDown) / length;
                    rays.off[rays.count] = (edge - 1) * support;
                    rays.slopes[rays.count] = new double[] {
                        normalRight / length, normalDown / length, support / disk.equatorialRadiusPx()
                    };
                    rays.count++;
                }
            }
            return rays;
        }

        /** Whether the limb at a place stands in the light: beyond the terminator the outline does not show. */
        private static boolean isLit(View view, double pole, double side) {
            double cosPhase = view.globe().cosPhase();
            double sinPhase = Math.sqrt(Math.max(0, 1 - cosPhase * cosPhase));
            double depth = view.depth(0.9999 * pole, 0.9999 * side);
            double incidence = view.cosIncidence(view.bodyX(pole, depth), side, view.bodyZ(pole, depth));
            return sinPhase < CLEAR_PHASE || incidence > LIT * sinPhase;
        }

        /** Finds by how much the outline must move; the standard error of its centre, per axis. */
        double fit(boolean radiusKnown) {
            double[] weights = new double[count];
            Arrays.fill(weights, 1);
            double scatter = 0;
            for (int k = 0; k < REWEIGHTINGS; k++) {
                solve(weights, radiusKnown);
                double[] sizes = new double[count];
                for (int i = 0; i < count; i++) {
                    sizes[i] = Math.abs(left(i));
                }
                Arrays.sort(sizes);
                scatter = Math.max(LEAST_SCATTER_PX, 1.4826 * sizes[count / 2]);
                for (int i = 0; i < count; i++) {
                    double part = left(i) / (BIWEIGHT * scatter);
                    weights[i] = Math.abs(part) < 1 ? (1 - part * part) * (1 - part * part) : 0;
                }
            }
            return scatter
                    * Math.sqrt(2 * ALIKE / Math.max(1, Arrays.stream(weights).sum()));
        }

        private double left(int ray) {
            double[] s = slopes[ray];
            return off[ray] - move[0] * s[0] - move[1] * s[1] - move[2] * s[2];
        }

        private void solve(double[] weights, boolean radiusKnown) {
            int n = radiusKnown ? 2 : 3;
            Skyline normals = new Skyline(new int[n]);
            for (int i = 0; i < count; i++) {
                normals.addObservation(1, new int[] {0}, new int[] {n}, slopes[i], weights[i], off[i]);
            }
            for (int p = 0; p < n; p++) {
                normals.add(p, p, 1e-6);
            }
            System.arraycopy(normals.solve(), 0, move, 0, n);
        }
    }

    /** Where brightness falls fastest on the way from a disk's centre over a place on its outline, as a part of that way. */
    private static double steepest(Plane frame, Disk disk, double right, double down) {
        double length = Math.hypot(right, down);
        double half = Math.max(LEAST_HALF_SLOPE_PX, HALF_SLOPE * disk.equatorialRadiusPx());
        int first = (int) (NEAREST * length);
        int n = (int) (FARTHEST * length) - first;
        double[] falls = new double[n];
        int best = 0;
        for (int k = 0; k < n; k++) {
            double inner = (first + k - half) / length;
            double outer = (first + k + half) / length;
            falls[k] = at(frame, disk.x() + inner * right, disk.y() + inner * down)
                    - at(frame, disk.x() + outer * right, disk.y() + outer * down);
            best = falls[k] > falls[best] || Double.isNaN(falls[best]) ? k : best;
        }
        // Belts and spots lie within: the limb is the outermost edge of those that are steep.
        for (int k = n - 2; k > best; k--) {
            if (falls[k] > STEEP * falls[best] && falls[k] > falls[k - 1] && falls[k] >= falls[k + 1]) {
                best = k;
            }
        }
        if (best == 0 || best >= n - 1 || Double.isNaN(falls[best - 1]) || Double.isNaN(falls[best + 1])) {
            return Double.NaN;
        }
        double bend = falls[best - 1] - 2 * falls[best] + falls[best + 1];
        double peak = bend < 0 ? 0.5 * (falls[best - 1] - falls[best + 1]) / bend : 0;
        return (first + best + peak) / length;
    }

    /** Brightness between pixels; NaN outside the frame and beside gaps. */
    private static double at(Plane frame, double x, double y) {
        int column = (int) Math.floor(x);
        int row = (int) Math.floor(y);
        if (column < 0 || row < 0 || column + 1 >= frame.width() || row + 1 >= frame.height()) {
            return Double.NaN;
        }
        double right = x - column;
        double down = y - row;
        return (1 - down) * ((1 - right) * frame.at(column, row) + right * frame.at(column + 1, row))
                + down * ((1 - right) * frame.at(column, row + 1) + right * frame.at(column + 1, row + 1));
    }
}
