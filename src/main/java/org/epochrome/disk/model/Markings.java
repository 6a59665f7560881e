package org.epochrome.disk.model;

import java.util.Arrays;
import org.epochrome.disk.View;
import org.epochrome.disk.ZonalDarkening;
import org.epochrome.disk.solve.BSpline;
import org.epochrome.disk.solve.Skyline;

/**
 * The markings of a globe as far as a disk fit needs them: the logarithm of a brightness factor, linear in its
 * coefficients. It is linear between spokes, directions evenly spaced around the disk, and made of cubic B-splines in the
 * surface's angle from the disk's centre ("rings"). Even in that angle, its grid gets finer in the picture towards the
 * limb as the surface is foreshortened.
 *
 * <p>It keeps markings near the limb from being taken for a displaced limb. What it may do is held down by a
 * prior on the differences between neighbours (P-splines: Eilers and Marx 1996, Statistical Science 11, 89), weighted
 * as Dirichlet's integral on the sphere. Large differences cost in proportion to their size and not to its square (total
 * variation: Rudin, Osher and Fatemi 1992, Physica D 60, 259), for caps and coasts are steep and plains are even.
 */
public final class Markings {
    /** Weights of neighbouring spokes at a place. */
    static final int SPOKE_WEIGHTS = 6;
    /**
     * Distance of fine spokes in blurs. A linear spline blurred by 1/1.73 of its knots' distance has the variance of the
     * quintic B-spline, 1/2, and its shape within a percent.
     */
    private static final double SPOKE = 1.73;

    private static final double COARSE_RING = Math.toRadians(12);
    private static final int COARSE_SPOKES = 24;
    private static final int LEAST_SPOKES = 11;
    /**
     * Power by which the prior's curvature is taken for less than the parabola's that touches it from above: 0 is that
     * parabola, safe and slow (lagged diffusivity), 1.5 is Newton's own, which overshoots.
     */
    private static final double LEAN = 0.3;

    /**
     * Detail finer than the markings: as a part of the brightness, and how many blurs inside the limb it begins to count
     * and counts fully. Near the limb it is left out of account, for the limb shall tell the blur. The markings are as
     * many blurs deep as they tell anything; their rings are so wide in units of the surface's angle over which the last
     * blur before the limb stretches. Small differences between neighbours have a standard deviation of {@code steepness};
     * in the last ring before the limb, where belts do not end but a limb that lies elsewhere would look like it, they are {@code rim}
     * times less likely; markings may stray some times wider from what is expected than the prior's curvature at the most probable ones says.
     */
    private record Fineness(
            double part,
            double from,
            double full,
            double depth,
            double ring,
            double steepness,
            double stray,
            double rim) {}

    /**
     * Lands and seas are broad. Caps and clouds end steeply, for which the prior has long tails that its curvature does not
     * tell of; from fits to rendered scenes.
     */
    private static final Fineness BROAD = new Fineness(0.03, 1.5, 4.5, 10, 0.55, 0.045, 3, 1);
    /**
     * Belts are full of fine detail, whose blur, drawn by markings too broad for it, would be taken for the limb's and
     * falsify the radius; from fits to rendered scenes.
     */
    private static final Fineness BELTED = new Fineness(0.5, 1, 3, 10, 0.8, 0.07, 1, 10);

    private static final double LAST_ANGLE = Math.PI / 2 - 1e-6;

    private final boolean coarse;
    private final Fineness fineness;
    private final double begin;
    private final double ringStep;
    private final int rings;
    private final int spokes;
    private final double spokeStep;
    /** Standard deviation of small differences between neighbours, and the difference at which "large" starts. */
    private final double steepness;

    private final double large;
    /** What the coefficients are expected to be, up to a common addend. */
    private final double[] expected;

    private Markings(boolean coarse, Fineness fineness, double begin, double ringStep, int spokes) {
        this.fineness = fineness;
        this.coarse = coarse;
        this.begin = begin;
        this.ringStep = ringStep;
        this.spokes = spokes;
        rings = (int) Math.ceil((Math.PI / 2 - begin) / ringStep) + 3;
        spokeStep = 2 * Math.PI / spokes;
        steepness = coarse ? 0.05 : fineness.steepness;
        large = coarse ? 1e3 : 0.15 * steepness;
        expected = new double[size()];
    }

    private Markings(Markings other, double[] expected) {
        coarse = other.coarse;
        fineness = other.fineness;
        begin = other.begin;
        ringStep = other.ringStep;
        rings = other.rings;
        spokes = other.spokes;
        spokeStep = other.spokeStep;
        steepness = other.steepness;
        large = other.large;
        this.expected = expected;
    }

    /** Whether they are those of a globe with belts. */
    boolean areBelted() {
        return fineness.equals(BELTED);
    }

    /** The markings, expected to follow the zones of a globe seen like this. */
    Markings along(ZonalDarkening zones, View view) {
        double ratio = view.globe().apparentAxisRatio();
        double[] values = new double[size()];
        for (int spoke = 0; spoke < spokes; spoke++) {
            double direction = spoke * spokeStep - Math.PI;
            for (int r = 0; r < rings; r++) {
                double sine = Math.sin(Math.min(LAST_ANGLE, angle(r)));
                double pole = ratio * sine * Math.sin(direction);
                double side = sine * Math.cos(direction);
                double depth = view.depth(pole, side);
                double bodyX = view.bodyX(pole, depth);
                double bodyZ = view.bodyZ(pole, depth);
                values[spoke * rings + r] = zones.logarithm(
                        view.graphicLatitude(bodyX, side, bodyZ),
                        ZonalDarkening.slope(
                                view.cosIncidence(bodyX, side, bodyZ), view.cosEmission(bodyX, side, bodyZ)));
            }
        }
        return new Markings(this, values);
    }

    /** What the coefficients are expected to be. */
    double[] expected() {
        return expected.clone();
    }

    /** Surface angle from the disk's centre where a ring's weight is greatest; the last lie beyond the limb. */
    private double angle(int ring) {
        return begin + (ring - 1) * ringStep;
    }

    /** Markings in broad strokes all over the disk, for a fit that starts far off. */
    public static Markings coarse() {
        return new Markings(true, BROAD, 0, COARSE_RING, COARSE_SPOKES);
    }

    /**
     * Markings around the limb, as fine as a blur allows to see, for a disk of the given radius in the same unit.
     *
     * @param belted whether the globe has belts along its parallels
     */
    public static Markings fine(double radius, double blur, boolean belted) {
        double part = blur / radius;
        Fineness fineness = belted ? BELTED : BROAD;
        double begin = Math.asin(Math.max(0, 1 - fineness.depth * part));
        int spokes = (int) Math.max(LEAST_SPOKES, Math.round(2 * Math.PI / (SPOKE * part)));
        return new Markings(false, fineness, begin, fineness.ring * Math.sqrt(2 * part), spokes);
    }

    /** Detail that the markings lack, so many blurs inside the limb, as a part of the brightness. */
    double unseen(double blursInside) {
        double part = (blursInside - fineness.from) / (fineness.full - fineness.from);
        return fineness.part * Math.max(0, Math.min(1, part));
    }

    public boolean areCoarse() {
        return coarse;
    }

    int rings() {
        return rings;
    }

    int spokes() {
        return spokes;
    }

    /** Number of coefficients: ring after ring of the first spoke, then of the next. */
    public int size() {
        return spokes * rings;
    }

    /** Elliptic radius from which on the markings are complete. */
    double leastRadius() {
        return Math.sin(begin);
    }

    /** The factor on the whole, a geometric mean. */
    public static double mean(double[] c) {
        return Math.exp(Arrays.stream(c).average().orElse(0));
    }

    /**
     * The weights of four rings at a surface angle from the disk's centre, radians.
     *
     * @return number of the first of the four
     */
    int ringWeights(double angle, double[] weights) {
        double u = Math.max(0, (angle - begin) / ringStep);
        int first = (int) u;
        BSpline.cubic(u - first, weights);
        return first;
    }

    /**
     * The weights of neighbouring spokes, blurred, in a direction, radians; returns the first's number, the others
     * follow, cyclically.
     */
    int spokeWeights(double direction, double[] weights) {
        double u = (direction + Math.PI) / spokeStep;
        int before = (int) u;
        BSpline.quintic(u - before, weights);
        return (before + spokes - 2) % spokes;
    }

    /** The coefficients of the rings in a direction, radians. */
    void along(double[] c, double direction, double[] along) {
        double u = (direction + Math.PI) / spokeStep;
        int before = (int) u;
        double f = u - before;
        int left = before % spokes * rings;
        int right = (before + 1) % spokes * rings;
        for (int r = 0; r < rings; r++) {
            along[r] = (1 - f) * c[left + r] + f * c[right + r];
        }
    }

    /** First non-zero column of each row of the normal equations, with some more unknowns at the end. */
    int[] skyline(int more) {
        int reach = SPOKE_WEIGHTS - 1;
        int[] first = new int[size() + more];
        for (int spoke = reach; spoke < spokes - reach; spoke++) {
            Arrays.fill(first, spoke * rings, (spoke + 1) * rings, (spoke - reach) * rings);
        }
        return first;
    }

    /** Adds the prior to the normal equations at the given coefficients. */
    void addPrior(double[] c, Skyline normals) {
        addPrior(c, normals, 1);
    }

    /** The prior as wide as markings may stray; for standard errors. */
    void addStrayingPrior(double[] c, Skyline normals) {
        addPrior(c, normals, fineness.stray);
    }

    private void addPrior(double[] c, Skyline normals, double width) {
        pairs((i, j, strength, limit) -> {
            double d = c[i] - expected[i] - (c[j] - expected[j]);
            double bend = 1 + d * d / (limit * limit);
            double w = strength / (width * width * Math.sqrt(bend));
            double h = w / Math.pow(bend, LEAN);
            normals.add(i, i, h);
            normals.add(j, j, h);
            normals.add(Math.max(i, j), Math.min(i, j), -h);
            normals.addRight(i, -w * d);
            normals.addRight(j, w * d);
        });
    }

    /** Twice the negative logarithm of the prior at the given coefficients. */
    double misfit(double[] c) {
        double[] sum = new double[1];
        pairs((i, j, strength, limit) -> {
            double d = c[i] - expected[i] - (c[j] - expected[j]);
            sum[0] += 2 * strength * limit * limit * (Math.sqrt(1 + d * d / (limit * limit)) - 1);
        });
        return sum[0];
    }

    /** What the prior does with a pair of coefficients: inverse variance of their difference, where "large" starts. */
    private interface Pull {
        void on(int i, int j, double strength, double limit);
    }

    private void pairs(Pull pull) {
        for (int spoke = 0; spoke < spokes; spoke++) {
            int next = (spoke + 1) % spokes;
            for (int r = 0; r < rings; r++) {
                int i = spoke * rings + r;
                double shape = Math.max(0.05, Math.sin(Math.min(Math.PI / 2, angle(r)))) * spokeStep / ringStep;
                pull(pull, i, next * rings + r, 1 / shape);
                if (r + 1 < rings) {
                    pull(pull, i, i + 1, r + 3 < rings ? shape : fineness.rim * shape);
                }
            }
        }
    }

    private void pull(Pull pull, int i, int j, double share) {
        pull.on(i, j, share / (steepness * steepness), large / Math.sqrt(share));
    }
}
