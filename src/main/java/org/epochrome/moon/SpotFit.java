package org.epochrome.moon;

import org.apache.commons.math3.linear.RealVector;
import org.epochrome.moon.fit.MoonFit;

/**
 * What a {@link MoonFit} says.
 *
 * @param place on the body's sky axes
 * @param level brightness of the moon, or part of the light that a shadow lets through
 * @param ground light around its middle
 * @param explained part of what is not smooth ground that the companion explains
 * @param squares sum of the squares that it leaves
 * @param sigmaPx standard error of the place, per axis
 * @param seen part of the companion that lies on pixels with data
 * @param coefficients of the smooth departure, then the level
 */
public record SpotFit(
        SkyPoint place,
        double level,
        double ground,
        double explained,
        double squares,
        double sigmaPx,
        double seen,
        RealVector coefficients) {
    SpotFit at(SkyPoint other) {
        return new SpotFit(other, level, ground, explained, squares, sigmaPx, seen, coefficients);
    }

    /** By how much it is brighter or darker than the ground, as a part of the brighter one. */
    public double contrast(boolean shadow) {
        double own = shadow ? level * ground : level;
        return (own - ground) / Math.max(1e-6, Math.max(own, ground));
    }
}
