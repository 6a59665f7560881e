package org.epochrome.map;

import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.RotationSystem;

/**
 * The pixels of an equirectangular map (plate carrée) of a whole globe in planetographic degrees: north up, east to the
 * right, so that nothing is mirrored, from longitude 0 to 360. On bodies whose planetographic longitude counts westward
 * it falls from left to right.
 *
 * @param width pixels, even; twice the height
 * @param westward whether longitude counts westward (IAU: against the sense of rotation, so that the central meridian
 *     grows)
 * @param meridianDeg longitude of the meridian that faces the observer
 */
public record MapGrid(int width, boolean westward, double meridianDeg) {
    public MapGrid {
        if (width < 2 || width % 2 != 0) {
            throw new IllegalArgumentException("A map must be an even number of pixels wide, not " + width + ".");
        }
    }

    /** The grid for a body as it stands, in one of its longitude systems. */
    public static MapGrid of(Aspect aspect, RotationSystem system, int width) {
        return new MapGrid(width, aspect.body().prograde(), aspect.centralMeridianDeg(system));
    }

    public int height() {
        return width / 2;
    }

    /** Side of a pixel in degrees. */
    public double stepDeg() {
        return 360.0 / width;
    }

    /** Longitude of a column's middle, 0 to 360. */
    public double longitudeDeg(double column) {
        double fromLeft = (column + 0.5) * stepDeg();
        return westward ? 360 - fromLeft : fromLeft;
    }

    /** Planetographic latitude of a row's middle. */
    public double latitudeDeg(double row) {
        return 90 - (row + 0.5) * stepDeg();
    }

    /** East longitude of a column from the meridian that faces the observer, radians, in any turn of the circle. */
    double eastRad(double column) {
        double beyond = longitudeDeg(column) - meridianDeg;
        return Math.toRadians(westward ? -beyond : beyond);
    }
}
