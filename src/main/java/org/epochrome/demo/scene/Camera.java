package org.epochrome.demo.scene;

import org.epochrome.ephemeris.Aspect;

/**
 * A camera on an equatorial mount: its grid, its turn against the sky, and where it puts the planet.
 *
 * @param width pixels
 * @param height pixels
 * @param arcsecPerPx image scale
 * @param celestialNorthDeg angle from image up to the celestial north pole of date, counter-clockwise positive as
 *     displayed
 * @param mirrored whether the image has an odd number of reflections (east is right when north is up)
 * @param offsetXPx where the body's centre falls, right of the middle of the frame
 * @param offsetYPx the same, below the middle of the frame
 */
public record Camera(
        int width,
        int height,
        double arcsecPerPx,
        double celestialNorthDeg,
        boolean mirrored,
        double offsetXPx,
        double offsetYPx) {
    public Camera {
        if (width <= 0 || height <= 0 || !(arcsecPerPx > 0)) {
            throw new IllegalArgumentException("A camera of " + width + "x" + height + " pixels of " + arcsecPerPx
                    + " arcsec cannot take a picture.");
        }
    }

    /** A camera turned so that the body's projected pole lies at {@code northAngleDeg} in the given aspect. */
    public static Camera withNorthAngle(
            int width, int height, double arcsecPerPx, double northAngleDeg, boolean mirrored, Aspect aspect) {
        double pole = aspect.poleAngleDeg();
        double celestialNorth = mirrored ? northAngleDeg + pole : northAngleDeg - pole;
        return new Camera(width, height, arcsecPerPx, celestialNorth, mirrored, 0, 0);
    }

    /** This camera with the body's centre elsewhere in the frame. */
    public Camera offsetBy(double xPx, double yPx) {
        return new Camera(width, height, arcsecPerPx, celestialNorthDeg, mirrored, xPx, yPx);
    }

    /** This camera rotated by 180 degrees, as by a mount that flipped at the meridian. */
    public Camera upsideDown() {
        return new Camera(width, height, arcsecPerPx, celestialNorthDeg + 180, mirrored, offsetXPx, offsetYPx);
    }

    /** x of the body's centre for undispersed light. */
    public double centreX() {
        return 0.5 * (width - 1) + offsetXPx;
    }

    /** y of the body's centre for undispersed light. */
    public double centreY() {
        return 0.5 * (height - 1) + offsetYPx;
    }

    /**
     * Where a position angle on the sky points in the image: degrees from up, counter-clockwise positive as displayed,
     * -180 to 180.
     */
    public double displayedAngleDeg(double positionAngleDeg) {
        double angle = celestialNorthDeg + (mirrored ? -positionAngleDeg : positionAngleDeg);
        return StrictMath.IEEEremainder(angle, 360);
    }
}
