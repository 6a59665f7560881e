package org.epochrome.session.compare;

/**
 * Mean squares of the slopes that white noise of one unit a pixel has in the difference of two softenings.
 *
 * @param along in the direction of the dispersion smear, per pixel squared
 * @param across at right angles to it
 */
record NoiseSlopes(double along, double across) {
    /**
     * A Gaussian of variances a and b has slopes with the mean square 1 / (8 pi sqrt(a³ b)) along the first; the product
     * of two Gaussians has the mean of their variances.
     *
     * @param fine variance of the narrower softening, pixels squared
     * @param coarse variance of the wider
     * @param drawn variance that comes on top along the smear
     */
    static NoiseSlopes of(double fine, double coarse, double drawn) {
        double both = 0.5 * (fine + coarse);
        return new NoiseSlopes(
                slope(fine + drawn, fine) - 2 * slope(both + drawn, both) + slope(coarse + drawn, coarse),
                slope(fine, fine + drawn) - 2 * slope(both, both + drawn) + slope(coarse, coarse + drawn));
    }

    private static double slope(double own, double other) {
        return 1 / (8 * Math.PI * Math.sqrt(own * own * own * other));
    }
}
