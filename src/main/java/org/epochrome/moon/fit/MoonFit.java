package org.epochrome.moon.fit;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.special.Erf;
import org.epochrome.image.blur.RoundSpot;
import org.epochrome.moon.MoonFrame;
import org.epochrome.moon.MoonOrShadow;
import org.epochrome.moon.SkyPoint;
import org.epochrome.moon.SpotFit;

/**
 * Fits a companion in a window of a frame. With e the light of the even globe, p a smooth departure from it (a polynomial, of higher
 * degree across the belts than along them) and c how much of a pixel the companion covers, the light is taken for
 *
 * <pre>(e + p)(1 - c) + b c      for a moon,      (e + p)(1 - c) + t e c      for a shadow,</pre>
 *
 * with the moon's brightness b or the light t that a shadow lets through. All but the place are linear unknowns.
 */
public final class MoonFit {
    /** Powers of the place along the belts and across them, of the smooth departure's terms. */
    private static final int[][] TERMS = {{0, 0}, {0, 1}, {0, 2}, {0, 3}, {0, 4}, {1, 0}, {2, 0}, {1, 1}};

    private static final int LEVEL = TERMS.length;
    private static final double RIDGE = 1e-9;
    private static final int REFINEMENTS = 4;
    /** Pixels of ground around a companion by which the ground below it is judged, in blurs and whole pixels. */
    private static final double GROUND_BLURS = 2;

    private static final double GROUND_PX = 2;

    /** Error of a ground that is well known. */
    private static final double GOOD = 0.02;

    private final MoonField field;
    private final MoonFrame frame;
    private final MoonOrShadow companion;
    private final RoundSpot spot;
    private final double middleX;
    private final double middleY;
    private final double reach;
    private final double sinNorth;
    private final double cosNorth;
    private final int pixels;
    private final int[] columns;
    private final int[] rows;
    private final double[] light;
    private final double[] even;
    /** Root of a pixel's weight, with which all that is known of it is multiplied. */
    private final double[] roots;
    /** Per pixel the terms of the smooth departure. */
    private final double[] terms;
    /** Normal equations of the ground alone: a companion covers few of the pixels, and only those are recomputed for each position. */
    private final double[][] groundNormal = new double[LEVEL][LEVEL];

    private final double[] groundRight = new double[LEVEL];
    private final double groundSquares;
    private final double coverReach;

    /** @param searchPx how far from its course the companion may be */
    public MoonFit(MoonField field, MoonOrShadow companion, double searchPx) {
        this.field = field;
        this.frame = field.frame();
        this.companion = companion;
        spot = frame.spot(companion);
        SkyPoint start = companion.at(frame.mid());
        middleX = frame.x(start);
        middleY = frame.y(start);
        reach = spot.coreReachPx() - 2 * frame.blurPx() + GROUND_BLURS * frame.blurPx() + GROUND_PX + 0.5 * searchPx;
        sinNorth = Math.sin(Math.toRadians(frame.fit().disk().northAngleDeg()));
        cosNorth = Math.cos(Math.toRadians(frame.fit().disk().northAngleDeg()));
        int left = (int) Math.max(0, Math.ceil(middleX - reach));
        int right = (int) Math.min(field.light().width() - 1, Math.floor(middleX + reach));
        int top = (int) Math.max(0, Math.ceil(middleY - reach));
        int bottom = (int) Math.min(field.light().height() - 1, Math.floor(middleY + reach));
        int most = Math.max(0, right - left + 1) * Math.max(0, bottom - top + 1);
        columns = new int[most];
        rows = new int[most];
        light = new double[most];
        even = new double[most];
        terms = new double[most * LEVEL];
        roots = new double[most];
        int n = 0;
        for (int y = top; y <= bottom; y++) {
            for (int x = left; x <= right; x++) {
                float value = field.light().at(x, y);
                if (!Float.isNaN(value) && square(x - middleX) + square(y - middleY) <= reach * reach) {
                    columns[n] = x;
                    rows[n] = y;
                    double root = trust(field.rough().at(x, y) * (1 - spot.at(x - middleX, y - middleY)));
                    roots[n] = root;
                    light[n] = root * value;
                    even[n] = root * field.even().at(x, y);
                    putTerms(x, y, root, terms, n * LEVEL);
                    n++;
                }
            }
        }
        pixels = n;
        double squares = 0;
        for (int p = 0; p < pixels; p++) {
            double value = light[p] - even[p];
            squares += value * value;
            addGround(groundNormal, groundRight, p, 1, value);
        }
        groundSquares = squares;
        coverReach = spot.reachPx() + 1;
    }

    /** Root of the weight of a pixel whose ground is known so well. */
    private static double trust(double rough) {
        return Double.isNaN(rough) ? 1 : GOOD / Math.hypot(GOOD, rough);
    }

    private void addGround(double[][] normal, double[] right, int p, double weight, double value) {
        int at = p * LEVEL;
        for (int i = 0; i < LEVEL; i++) {
            double term = weight * terms[at + i];
            for (int j = 0; j <= i; j++) {
                normal[i][j] += term * terms[at + j];
            }
            right[i] += terms[at + i] * value;
        }
    }

    /** Fitted where it best lies. */
    public SpotFit free(double searchPx) {
        double x = middleX;
        double y = middleY;
        double step = Math.max(1, 0.8 * frame.blurPx());
        double best = Double.POSITIVE_INFINITY;
        for (double j = -Math.floor(searchPx / step); j * step <= searchPx; j++) {
            for (double i = -Math.floor(searchPx / step); i * step <= searchPx; i++) {
                double squares = solve(middleX + i * step, middleY + j * step, true).squares;
                if (squares < best) {
                    best = squares;
                    x = middleX + i * step;
                    y = middleY + j * step;
                }
            }
        }
        double curvature = 0;
        for (int k = 0; k < REFINEMENTS; k++) {
            double[][] s = new double[3][3];
            for (int j = 0; j < 3; j++) {
                for (int i = 0; i < 3; i++) {
                    s[j][i] = solve(x + (i - 1) * step, y + (j - 1) * step, true).squares;
                }
            }
            double gx = (s[1][2] - s[1][0]) / 2;
            double gy = (s[2][1] - s[0][1]) / 2;
            double hx = Math.max(1e-12, s[1][2] - 2 * s[1][1] + s[1][0]);
            double hy = Math.max(1e-12, s[2][1] - 2 * s[1][1] + s[0][1]);
            double hxy = (s[2][2] - s[2][0] - s[0][2] + s[0][0]) / 4;
            double det = hx * hy - hxy * hxy;
            double dx = det > 0 ? -(hy * gx - hxy * gy) / det : -gx / hx;
            double dy = det > 0 ? -(hx * gy - hxy * gx) / det : -gy / hy;
            x += step * Math.max(-1, Math.min(1, dx));
            y += step * Math.max(-1, Math.min(1, dy));
            curvature = 0.5 * (hx + hy) / (step * step);
            step = Math.max(0.25, 0.5 * step);
        }
        return found(x, y, curvature);
    }

    /** Fitted at its course's place. */
    public SpotFit held() {
        return found(middleX, middleY, 0);
    }

    /** Rms of what a fit leaves, a pixel: the frame's noise and the ground's roughness. */
    public double rest(SpotFit found) {
        return Math.sqrt(found.squares() / Math.max(1, pixels - LEVEL - 1));
    }

    private SpotFit found(double x, double y, double curvature) {
        Solved with = solve(x, y, true);
        Solved without = solve(x, y, false);
        double variance = with.squares / Math.max(1, pixels - LEVEL - 3);
        return new SpotFit(
                frame.place(x, y),
                with.coefficients.getEntry(LEVEL),
                ground(with.coefficients, x, y),
                1 - with.squares / Math.max(1e-30, without.squares),
                with.squares,
                Math.sqrt(2 * variance / Math.max(1e-12, curvature)),
                seen(x, y),
                with.coefficients);
    }

    /** Part of the companion at a place that lies on pixels with data. */
    private double seen(double x, double y) {
        double all = 0;
        double seen = 0;
        int core = (int) Math.ceil(spot.coreReachPx());
        for (int j = (int) Math.round(y) - core; j <= Math.round(y) + core; j++) {
            for (int i = (int) Math.round(x) - core; i <= Math.round(x) + core; i++) {
                double cover = spot.at(i - x, j - y);
                boolean inside = i >= 0
                        && j >= 0
                        && i < field.light().width()
                        && j < field.light().height();
                all += cover;
                seen += inside && !Float.isNaN(field.light().at(i, j)) ? cover : 0;
            }
        }
        return seen / all;
    }

    /** How much of a pixel the companion covers if it stands at a place. */
    public double cover(double x, double y, SkyPoint place) {
        return cover(spot, x, y, place);
    }

    /** How much of a pixel the companion covers if it stands at a place, with another picture of it. */
    public double cover(RoundSpot picture, double x, double y, SkyPoint place) {
        double cover = picture.at(x - frame.x(place), y - frame.y(place));
        return companion.behind() ? cover * beyondLimb(frame, x, y) : cover;
    }

    /** 1 off the disk, 0 on it, with the limb's blur. */
    static double beyondLimb(MoonFrame frame, double x, double y) {
        double beyondPx = (frame.elliptic(x, y) - 1) * frame.radiusPx();
        return 0.5 * (1 + Erf.erf(beyondPx / (Math.sqrt(2) * frame.blurPx())));
    }

    /** Light of the ground at a pixel without the companion, by a fit's coefficients. */
    public double ground(RealVector coefficients, double x, double y) {
        int column = (int) Math.max(0, Math.min(field.even().width() - 1, Math.round(x)));
        int row = (int) Math.max(0, Math.min(field.even().height() - 1, Math.round(y)));
        double light = field.even().at(column, row);
        double[] own = new double[LEVEL];
        putTerms(x, y, 1, own, 0);
        for (int k = 0; k < LEVEL; k++) {
            light += coefficients.getEntry(k) * own[k];
        }
        return light;
    }

    /** How far from the middle pixels count. */
    double reachPx() {
        return reach;
    }

    private record Solved(RealVector coefficients, double squares) {}

    /** Puts the terms of the smooth departure at a place into a list from an index on. */
    private void putTerms(double x, double y, double factor, double[] list, int at) {
        double dx = (x - middleX) / reach;
        double dy = (y - middleY) / reach;
        double across = -dx * sinNorth - dy * cosNorth;
        double along = dx * cosNorth - dy * sinNorth;
        for (int k = 0; k < LEVEL; k++) {
            list[at + k] = factor * power(along, TERMS[k][0]) * power(across, TERMS[k][1]);
        }
    }

    private static double square(double value) {
        return value * value;
    }

    private static double power(double base, int exponent) {
        double power = 1;
        for (int i = 0; i < exponent; i++) {
            power *= base;
        }
        return power;
    }

    private Solved solve(double x, double y, boolean with) {
        int n = LEVEL + 1;
        double[][] normal = new double[n][n];
        double[] right = new double[n];
        for (int i = 0; i < LEVEL; i++) {
            System.arraycopy(groundNormal[i], 0, normal[i], 0, i + 1);
        }
        System.arraycopy(groundRight, 0, right, 0, LEVEL);
        double all = groundSquares;
        SkyPoint place = frame.place(x, y);
        double placeX = frame.x(place);
        double placeY = frame.y(place);
        for (int p = 0; p < pixels; p++) {
            double dx = columns[p] - placeX;
            double dy = rows[p] - placeY;
            double cover = with && dx * dx + dy * dy < coverReach * coverReach ? cover(columns[p], rows[p], place) : 0;
            if (cover == 0) {
                continue;
            }
            double free = 1 - cover;
            double own = companion.shadow() ? cover * even[p] : cover * roots[p];
            double value = light[p] - even[p] * free;
            double before = light[p] - even[p];
            addGround(normal, right, p, free * free - 1, free * value - before);
            for (int j = 0; j < LEVEL; j++) {
                normal[LEVEL][j] += own * free * terms[p * LEVEL + j];
            }
            normal[LEVEL][LEVEL] += own * own;
            right[LEVEL] += own * value;
            all += value * value - before * before;
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                normal[j][i] = normal[i][j];
            }
            normal[i][i] += RIDGE * (1 + pixels);
        }
        RealVector solved = new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-6, 0)
                .getSolver()
                .solve(new ArrayRealVector(right, false));
        double squares = all;
        for (int i = 0; i < n; i++) {
            squares -= solved.getEntry(i) * right[i];
        }
        return new Solved(solved, Math.max(1e-30, squares));
    }
}
