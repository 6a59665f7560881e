package org.epochrome.disk.model;

import org.epochrome.disk.solve.Skyline;

/**
 * What is expected of a belted globe's visible limb at the poles: hazes there, bright in blue and ultraviolet, stand up to two or
 * three hundred kilometres above the level that radii refer to (Jupiter: Rages et al. 1999, Icarus 139, 211; 0.3 % of its
 * radius), so that the disk looks less flattened than the body is.
 */
public final class PolarHaze {
    /** Scatter of the polar radius as a part of itself. */
    private static final double SCATTER = 0.003;

    /** So many pixels around a limb share what the model misses; see {@link LimbLawEstimate}. */
    private static final double SHARED = 25;

    private static final double TRUST = SHARED / (SCATTER * SCATTER);

    private PolarHaze() {}

    /** Adds the expectation to normal equations whose shape parameters begin at an index. */
    public static void addTo(Skyline normals, int first, double[] shape) {
        normals.add(first + Unknowns.POLES, first + Unknowns.POLES, TRUST);
        normals.addRight(first + Unknowns.POLES, -TRUST * shape[Unknowns.POLES]);
    }

    /** Twice the negative logarithm of the prior. */
    static double misfit(double[] shape) {
        return TRUST * shape[Unknowns.POLES] * shape[Unknowns.POLES];
    }
}
