package org.epochrome.disk;

/**
 * Where and how a body's disk lies in an image.
 *
 * @param x column of the projected body's centre (not of the lit part's), pixels
 * @param y row of the same, downward
 * @param equatorialRadiusPx of the limb along the equator
 * @param northAngleDeg from image up to the projected IAU north pole, counter-clockwise positive as displayed
 * @param mirrored whether the image has an odd number of reflections (east is right when sky north is up)
 */
public record Disk(double x, double y, double equatorialRadiusPx, double northAngleDeg, boolean mirrored) {

    public Disk movedBy(double dx, double dy) {
        return new Disk(x + dx, y + dy, equatorialRadiusPx, northAngleDeg, mirrored);
    }

    public Disk withRadius(double radiusPx) {
        return new Disk(x, y, radiusPx, northAngleDeg, mirrored);
    }

    /** This disk with north at another angle, brought between -180 and 180 degrees. */
    public Disk withNorth(double angleDeg) {
        return new Disk(x, y, equatorialRadiusPx, wrapDeg(angleDeg), mirrored);
    }

    /** This disk on the plane {@linkplain org.epochrome.image.Binning binned} by a factor. */
    public Disk binned(int factor) {
        double middle = 0.5 * (factor - 1);
        return new Disk(
                (x - middle) / factor, (y - middle) / factor, equatorialRadiusPx / factor, northAngleDeg, mirrored);
    }

    /** A disk on the binned plane, on the pixels of the whole one. */
    public Disk unbinned(int factor) {
        double middle = 0.5 * (factor - 1);
        return new Disk(x * factor + middle, y * factor + middle, equatorialRadiusPx * factor, northAngleDeg, mirrored);
    }

    /** An angle between -180 (inclusive) and 180 degrees. */
    public static double wrapDeg(double angleDeg) {
        return angleDeg - 360.0 * Math.floor((angleDeg + 180.0) / 360.0);
    }
}
