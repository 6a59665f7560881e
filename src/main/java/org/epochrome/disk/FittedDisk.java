package org.epochrome.disk;

import org.epochrome.image.Plane;

/**
 * What a fit found in one plane.
 *
 * @param disk place, size and orientation
 * @param shading limb darkening and blur
 * @param background sky level at the disk's centre, in the plane's units
 * @param brightness factor of the even globe, in the plane's units above the sky
 * @param noise standard deviation of the sky, in the plane's units
 * @param centreSigmaPx standard error of the centre, per axis
 * @param radiusSigmaPx standard error of the equatorial radius; 0 if it was given
 * @param northSigmaDeg standard error of the north angle; 0 if it was given
 * @param residual rms of what the model leaves within two blurs inside the limb, as a part of the disk's brightness
 * @param rings brightness of Saturn's rings
 * @param skySlope how the sky's brightness changes over the frame
 * @param passband how wide the passband is by the smear
 * @param centreByRadius how far the centre goes if the radius is taken for so much larger: little if all of the limb is seen,
 *     much if only one side is; 0 if the radius was given
 */
public record FittedDisk(
        Disk disk,
        Shading shading,
        double background,
        double brightness,
        double noise,
        double centreSigmaPx,
        double radiusSigmaPx,
        double northSigmaDeg,
        double residual,
        RingLight rings,
        SkySlope skySlope,
        PassbandWidth passband,
        double centreByRadius) {

    /** A disk without rings under an even sky. */
    public FittedDisk(
            Disk disk,
            Shading shading,
            double background,
            double brightness,
            double noise,
            double centreSigmaPx,
            double radiusSigmaPx,
            double northSigmaDeg,
            double residual) {
        this(
                disk,
                shading,
                background,
                brightness,
                noise,
                centreSigmaPx,
                radiusSigmaPx,
                northSigmaDeg,
                residual,
                RingLight.NONE,
                SkySlope.NONE,
                PassbandWidth.UNKNOWN,
                0);
    }

    /** The same fit with the disk at another place or in another posture. */
    public FittedDisk at(Disk other) {
        return with(other, shading, northSigmaDeg, skySlope);
    }

    /** The same fit on the plane binned by a factor. */
    public FittedDisk binned(int factor) {
        Disk small = disk.binned(factor);
        SkySlope steeper = skySlope.times(factor);
        return with(small, shading.carried(disk, small), northSigmaDeg, steeper);
    }

    /** The same fit with another standard error of the north angle. */
    public FittedDisk withNorthSigma(double sigmaDeg) {
        return with(disk, shading, sigmaDeg, skySlope);
    }

    /** The fit with a centre that is less sure. */
    public FittedDisk doubted(double centrePx) {
        return doubted(centrePx, radiusSigmaPx, centreByRadius);
    }

    /** The fit with a centre that is less sure, and a radius too if it was not given. */
    public FittedDisk doubted(double centrePx, double radiusPx) {
        return doubted(centrePx, radiusSigmaPx > 0 ? Math.hypot(radiusSigmaPx, radiusPx) : 0, centreByRadius);
    }

    /**
     * The fit with a radius that is known from elsewhere: its error moves the centre as far as that hangs on it.
     *
     * @param sigmaPx standard error of the radius
     * @param byRadius how far the centre goes with the radius
     */
    public FittedDisk withRadiusSigma(double sigmaPx, double byRadius) {
        return doubted(byRadius * sigmaPx / Math.sqrt(2), sigmaPx, byRadius);
    }

    private FittedDisk doubted(double centrePx, double radiusPx, double byRadius) {
        return new FittedDisk(
                disk,
                shading,
                background,
                brightness,
                noise,
                Math.hypot(centreSigmaPx, centrePx),
                radiusPx,
                northSigmaDeg,
                residual,
                rings,
                skySlope,
                passband,
                byRadius);
    }

    /** The fit with what another one found out about the passband. */
    public FittedDisk withPassband(PassbandWidth other) {
        return new FittedDisk(
                disk,
                shading,
                background,
                brightness,
                noise,
                centreSigmaPx,
                radiusSigmaPx,
                northSigmaDeg,
                residual,
                rings,
                skySlope,
                other,
                centreByRadius);
    }

    /** The same fit on the plane as {@link Unsmear} leaves it. */
    public FittedDisk cleared(Unsmear.Extent extent) {
        return with(disk, shading.drawnOut(Unsmear.left(shading, extent)), northSigmaDeg, skySlope);
    }

    /** The same fit with another exponent of the shading. */
    public FittedDisk withMinnaert(double minnaert) {
        return with(disk, shading.withMinnaert(minnaert), northSigmaDeg, skySlope);
    }

    /** The frame with an even sky, of the level {@link #background}. */
    public Plane withEvenSky(Plane frame) {
        return skySlope.equals(SkySlope.NONE) ? frame : skySlope.evened(frame, disk);
    }

    private FittedDisk with(Disk otherDisk, Shading otherShading, double sigmaDeg, SkySlope otherSlope) {
        return new FittedDisk(
                otherDisk,
                otherShading,
                background,
                brightness,
                noise,
                centreSigmaPx,
                radiusSigmaPx,
                sigmaDeg,
                residual,
                rings,
                otherSlope,
                passband,
                centreByRadius);
    }
}
