package org.epochrome.image.defect;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.epochrome.image.Plane;
import org.epochrome.image.ValueRange;
import org.epochrome.job.Rows;

/**
 * Finds single pixels and thin tracks that no optics can have drawn: hot and dead pixels, cosmic rays. A pixel is struck if it lies
 * off the mean of its two neighbours, in the same sense, in all four directions through it. Along a limb, a belt or a ring
 * one direction runs with the structure, so these are spared whatever their profile; a star or moon is spared because its neighbours
 * are lifted too. Tracks are eaten from their ends, pixels already found counting as missing.
 *
 * <p>The idea that sharpness distinguishes such pixels from objects is that of van Dokkum 2001 (PASP 113, 1420), who uses the Laplacian.
 */
final class SpotFilter {
    /** Offsets to one neighbour in each of the four directions; the other lies opposite. */
    private static final int[][] DIRECTIONS = {{1, 0}, {0, 1}, {1, 1}, {1, -1}};
    /** Standard deviations of the noise by which a pixel must differ. */
    private static final double SIGMAS = 7;
    /** Standard deviations of the noise by which a neighbour of a spot must differ. */
    private static final double SIGMAS_BESIDE = 4;
    /** So many times more for dark ones: an encoding stretches the noise of a dark sky downward. */
    private static final double DARK = 1.5;
    /** Least part of the frame's range of values by which it must lie off: less does no harm. */
    private static final double LEAST = 0.01;
    /** Grey levels by which it must lie off: rounding makes one or two. */
    private static final double LEAST_STEPS = 2.5;
    /** So many times what its neighbours are lifted above those around them; a star of 0.75 px blur (1 sigma) has 2.2. */
    private static final double SHARPER_THAN_STARS = 2.6;
    /** Part of the range of the smooth picture around it. */
    private static final double OF_STRUCTURE = 0.5;
    /** A track is eaten by a pixel at each end in each round. */
    private static final int ROUNDS = 6;
    /** Half the width of the window in which noise is measured. */
    private static final int NOISE_REACH = 7;

    private static final int FEWEST_FOR_NOISE = 20;

    private final Plane plane;
    private final boolean[] struck;
    private final double least;

    private SpotFilter(Plane plane, ValueRange range) {
        this.plane = plane;
        struck = new boolean[plane.data().length];
        least = Math.max(LEAST * range.width(), LEAST_STEPS * range.step());
    }

    /** For each pixel of a plane whether it is struck. */
    static boolean[] struck(Plane plane, ValueRange range) {
        SpotFilter filter = new SpotFilter(plane, range);
        filter.find();
        return filter.struck;
    }

    private void find() {
        int[] found = round(false);
        for (int i = 1; i < ROUNDS && found.length > 0; i++) {
            found = round(true);
        }
    }

    /** Tests all pixels against what was found before, so that their order does not matter. */
    private int[] round(boolean beside) {
        boolean[] found = new boolean[struck.length];
        Rows.each(plane.height(), (from, to) -> {
            for (int y = from; y < to; y++) {
                for (int x = 0; x < plane.width(); x++) {
                    found[y * plane.width() + x] = isStruck(x, y, beside);
                }
            }
        });
        int[] pixels = IntStream.range(0, found.length).filter(p -> found[p]).toArray();
        for (int p : pixels) {
            struck[p] = true;
        }
        return pixels;
    }

    private boolean isStruck(int x, int y, boolean beside) {
        float value = at(x, y);
        if (!beside && isBetweenNeighbours(x, y, value)) {
            return false;
        }
        if (Float.isNaN(value) || (beside && !touchesStruck(x, y))) {
            return false;
        }
        double off = off(x, y, value);
        if (!(Math.abs(off) > least)) {
            return false;
        }
        double sense = Math.signum(off);
        double size = Math.abs(off);
        if (size < SHARPER_THAN_STARS * sense * lifted(x, y)) {
            return false;
        }
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int j = -2; j <= 2; j++) {
            for (int i = -2; i <= 2; i++) {
                double smooth = smooth(x + i, y + j);
                lowest = smooth < lowest ? smooth : lowest;
                highest = smooth > highest ? smooth : highest;
            }
        }
        return size > OF_STRUCTURE * (highest - lowest)
                && size
                        > (beside ? SIGMAS_BESIDE : SIGMAS)
                                * (sense < 0 ? DARK : 1)
                                * noise(x, y, 0.25 * (highest - lowest));
    }

    /** Whether a pixel lies above the mean of its neighbours in one direction and not in another: most do, and are not struck. */
    private boolean isBetweenNeighbours(int x, int y, float value) {
        if (x == 0 || y == 0 || x == plane.width() - 1 || y == plane.height() - 1) {
            return false;
        }
        float[] data = plane.data();
        int p = y * plane.width() + x;
        int q = plane.width();
        float across = value - 0.5f * (data[p - 1] + data[p + 1]);
        float down = value - 0.5f * (data[p - q] + data[p + q]);
        return across * down < 0;
    }

    /** By how much a pixel lies off the mean of its neighbours in every direction; 0 if not in one sense. */
    private double off(int x, int y, float value) {
        double least = Double.POSITIVE_INFINITY;
        double sense = 0;
        int known = 0;
        for (int[] d : DIRECTIONS) {
            double off = value - 0.5 * (at(x + d[0], y + d[1]) + at(x - d[0], y - d[1]));
            if (Double.isNaN(off)) {
                continue;
            }
            if (known > 0 && Math.signum(off) != sense) {
                return 0;
            }
            sense = Math.signum(off);
            least = Math.min(least, Math.abs(off));
            known++;
        }
        return known < 2 ? 0 : sense * least;
    }

    /** By how much the eight neighbours lie above the median of the sixteen around them. */
    private double lifted(int x, int y) {
        double sum = 0;
        int near = 0;
        double[] ring = new double[16];
        int far = 0;
        for (int j = -2; j <= 2; j++) {
            for (int i = -2; i <= 2; i++) {
                float v = at(x + i, y + j);
                if (Float.isNaN(v) || (i == 0 && j == 0)) {
                    continue;
                }
                if (Math.abs(i) == 2 || Math.abs(j) == 2) {
                    ring[far++] = v;
                } else {
                    sum += v;
                    near++;
                }
            }
        }
        return near == 0 || far == 0 ? 0 : sum / near - median(ring, far);
    }

    /** Median of a pixel and its neighbours; NaN where there is none. */
    private double smooth(int x, int y) {
        double[] values = new double[9];
        int n = 0;
        for (int j = -1; j <= 1; j++) {
            for (int i = -1; i <= 1; i++) {
                float v = at(x + i, y + j);
                if (!Float.isNaN(v)) {
                    values[n++] = v;
                }
            }
        }
        return n == 0 ? Double.NaN : median(values, n);
    }

    /**
     * Standard deviation of the noise among the pixels around that are about as bright as this one or brighter: light brings noise.
     *
     * @param tolerance by how much they may be darker
     */
    private double noise(int x, int y, double tolerance) {
        int width = 2 * NOISE_REACH + 1;
        double[] similar = new double[width * width];
        double[] all = new double[width * width];
        int n = 0;
        int count = 0;
        double dark = smooth(x, y) - tolerance;
        for (int j = y - NOISE_REACH; j <= y + NOISE_REACH; j++) {
            for (int i = x - NOISE_REACH; i <= x + NOISE_REACH; i++) {
                double off = Math.abs(at(i, j) - 0.5 * (at(i + 1, j) + at(i - 1, j)));
                if (Double.isNaN(off)) {
                    continue;
                }
                all[count++] = off;
                if (at(i, j) >= dark) {
                    similar[n++] = off;
                }
            }
        }
        // A mean of two has half their variance: off by the noise times the root of 1.5.
        double scale = 1.4826 / Math.sqrt(1.5);
        return scale * (n >= FEWEST_FOR_NOISE ? median(similar, n) : count == 0 ? 0 : median(all, count));
    }

    private boolean touchesStruck(int x, int y) {
        for (int j = Math.max(0, y - 1); j <= Math.min(plane.height() - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(plane.width() - 1, x + 1); i++) {
                if (struck[j * plane.width() + i]) {
                    return true;
                }
            }
        }
        return false;
    }

    /** A value; NaN beyond the edge, without data, or struck. */
    private float at(int x, int y) {
        boolean inside = x >= 0 && y >= 0 && x < plane.width() && y < plane.height();
        return inside && !struck[y * plane.width() + x] ? plane.at(x, y) : Float.NaN;
    }

    private static double median(double[] values, int count) {
        Arrays.sort(values, 0, count);
        return values[count / 2];
    }
}
