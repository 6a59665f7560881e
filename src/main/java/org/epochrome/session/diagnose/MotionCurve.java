package org.epochrome.session.diagnose;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * How well the detail of two frames agrees if the surface moved between them by an angle, for each angle: the part that
 * one explains of the other, in standard deviations of what it explains at wrong angles by chance. Bands differ, so each
 * zone of latitudes has a gain of its own, positive or negative.
 */
final class MotionCurve {
    /** Widest angle: beyond it the frames have too little in common. */
    static final int WIDEST_DEG = 100;

    private static final int ZONES = 6;
    /** Part of the weight that must be common. */
    private static final double LEAST_COMMON = 0.12;
    /** Median of the absolute departures as a standard deviation. */
    private static final double MAD = 1.4826;

    private final double[] score;
    private final double chance;
    private final double spread;

    private MotionCurve(double[] score, double chance, double spread) {
        this.score = score;
        this.chance = chance;
        this.spread = spread;
    }

    /** The curve of two frames: how far the detail of the first lies east of that of the second. */
    static MotionCurve of(DetailMap first, DetailMap second) {
        double[] part = new double[2 * WIDEST_DEG + 1];
        for (int k = 0; k < part.length; k++) {
            part[k] = explained(first, second, k - WIDEST_DEG);
        }
        double[] known =
                Arrays.stream(part).filter(p -> !Double.isNaN(p)).sorted().toArray();
        if (known.length < part.length / 4) {
            return new MotionCurve(new double[part.length], 0, Double.POSITIVE_INFINITY);
        }
        double median = known[known.length / 2];
        double[] off =
                Arrays.stream(known).map(p -> Math.abs(p - median)).sorted().toArray();
        double sigma = Math.max(1e-9, MAD * off[off.length / 2]);
        return new MotionCurve(
                Arrays.stream(part)
                        .map(p -> Double.isNaN(p) ? 0 : (p - median) / sigma)
                        .toArray(),
                median,
                sigma);
    }

    /**
     * The best agreement of two frames near one angle, by what another orientation of them explains by chance.
     *
     * @param within distance from the angle, degrees
     */
    static double at(DetailMap first, DetailMap second, double deg, double within, MotionCurve like) {
        double best = 0;
        for (int shift = (int) Math.floor(deg - within); shift <= Math.ceil(deg + within); shift++) {
            double part = Math.abs(shift) > WIDEST_DEG ? Double.NaN : explained(first, second, shift);
            best = Double.isNaN(part) ? best : Math.max(best, (part - like.chance) / like.spread);
        }
        return best;
    }

    private static double explained(DetailMap first, DetailMap second, int shift) {
        double explained = 0;
        double total = 0;
        double common = 0;
        double whole = 0;
        for (int zone = 0; zone < ZONES; zone++) {
            double aa = 0;
            double ab = 0;
            double bb = 0;
            int to = DetailMap.ROWS * (zone + 1) / ZONES;
            for (int row = DetailMap.ROWS * zone / ZONES; row < to; row++) {
                for (int column = 0; column < DetailMap.COLUMNS; column++) {
                    double own = second.weight(row, column);
                    whole += own;
                    int there = column + shift;
                    if (there < 0 || there >= DetailMap.COLUMNS) {
                        continue;
                    }
                    double w = own * first.weight(row, there);
                    double a = first.detail(row, there);
                    double b = second.detail(row, column);
                    common += Math.sqrt(w);
                    aa += w * a * a;
                    ab += w * a * b;
                    bb += w * b * b;
                }
            }
            explained += aa > 0 ? ab * ab / aa : 0;
            total += bb;
        }
        return total > 0 && common > LEAST_COMMON * whole ? explained / total : Double.NaN;
    }

    /** The curve of the same frames in the other order. */
    MotionCurve reversed() {
        double[] other = new double[score.length];
        for (int k = 0; k < other.length; k++) {
            other[k] = score[score.length - 1 - k];
        }
        return new MotionCurve(other, chance, spread);
    }

    /** The sum of curves, each of which is read at its own angle beside a common one. */
    static MotionCurve sum(List<MotionCurve> curves, double[] offsetsDeg) {
        double[] sum = new double[2 * WIDEST_DEG + 1];
        for (int k = 0; k < sum.length; k++) {
            for (int i = 0; i < curves.size(); i++) {
                sum[k] += curves.get(i).at(k - WIDEST_DEG + offsetsDeg[i]);
            }
        }
        return new MotionCurve(sum, 0, 1);
    }

    /** The agreement at an angle, degrees; 0 where it is not known. */
    double at(double deg) {
        double place = deg + WIDEST_DEG;
        int k = (int) Math.floor(place);
        if (k < 0 || k + 1 >= score.length) {
            return 0;
        }
        double part = place - k;
        return (1 - part) * score[k] + part * score[k + 1];
    }

    /** The best agreement within a distance of an angle, degrees. */
    double near(double deg, double within) {
        return DoubleStream.iterate(-within, d -> d <= within, d -> d + 0.25 * within)
                .map(d -> at(deg + d))
                .max()
                .orElse(0);
    }

    /**
     * Where frames agree best.
     *
     * @param deg the angle
     * @param score agreement there
     */
    record Peak(double deg, double score) {}

    Peak peak() {
        int best = 1;
        for (int k = 1; k < score.length - 1; k++) {
            if (score[k] > score[best]) {
                best = k;
            }
        }
        double left = score[best - 1];
        double right = score[best + 1];
        double bend = left - 2 * score[best] + right;
        double off = bend < 0 ? 0.5 * (left - right) / bend : 0;
        return new Peak(best - WIDEST_DEG + Math.max(-0.5, Math.min(0.5, off)), score[best]);
    }
}
