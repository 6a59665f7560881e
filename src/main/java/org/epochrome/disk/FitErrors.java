package org.epochrome.disk;

/**
 * Standard errors of a fitted disk.
 *
 * @param centrePx of the centre, per axis; if the radius is common, apart from what its error does to the centre
 * @param radiusPx of the equatorial radius; 0 if it was given
 * @param northDeg of the north angle; 0 if it was given
 * @param centreByRadius how far the centre moves if the radius is taken one pixel larger
 * @param commonRadius whether other frames have the radius in common and so share its error
 */
public record FitErrors(
        double centrePx, double radiusPx, double northDeg, CentreByRadius centreByRadius, boolean commonRadius) {

    /**
     * How far the centre moves, in pixels for each pixel of the radius: little if all of the limb is seen, much if only one
     * side is; 0 if the radius was given.
     *
     * @param x to the right
     * @param y downward
     */
    public record CentreByRadius(double x, double y) {
        public static final CentreByRadius NONE = new CentreByRadius(0, 0);

        /** The length of the move, pixels for each pixel. */
        public double length() {
            return Math.hypot(x, y);
        }
    }

    /** Errors of a disk whose radius is its own. */
    public FitErrors(double centrePx, double radiusPx, double northDeg) {
        this(centrePx, radiusPx, northDeg, CentreByRadius.NONE, false);
    }

    /** Standard error of the centre whatever its cause, per axis, pixels. */
    public double allOfCentrePx() {
        return commonRadius ? Math.hypot(centrePx, centreByRadius.length() * radiusPx / Math.sqrt(2)) : centrePx;
    }

    /** The errors with a less certain centre, by a standard error per axis in pixels. */
    FitErrors addedToCentre(double px) {
        return new FitErrors(Math.hypot(centrePx, px), radiusPx, northDeg, centreByRadius, commonRadius);
    }

    /** The errors with a less certain radius, by a standard error in pixels; as they are if it was given. */
    FitErrors addedToRadius(double px) {
        return radiusPx == 0
                ? this
                : new FitErrors(centrePx, Math.hypot(radiusPx, px), northDeg, centreByRadius, commonRadius);
    }

    /** The errors with a radius that frames have in common, and what the centre owes to it. */
    FitErrors withCommonRadius(double sigmaPx, CentreByRadius byRadius) {
        return new FitErrors(centrePx, sigmaPx, northDeg, byRadius, true);
    }

    FitErrors withNorth(double sigmaDeg) {
        return new FitErrors(centrePx, radiusPx, sigmaDeg, centreByRadius, commonRadius);
    }
}
