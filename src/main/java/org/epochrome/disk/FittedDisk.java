package org.epochrome.disk;

/**
 * What a fit found in one plane.
 *
 * @param disk place, size and orientation
 * @param shading limb darkening and blur
 * @param background sky level, in the plane's units
 * @param brightness factor of the even globe, in the plane's units above the sky
 * @param noise standard deviation of the sky, in the plane's units
 * @param centreSigmaPx standard error of the centre, per axis
 * @param radiusSigmaPx standard error of the equatorial radius; 0 if it was given
 * @param northSigmaDeg standard error of the north angle; 0 if it was given
 * @param residual rms of what the model leaves within two blurs inside the limb, as a part of the disk's brightness
 * @param rings brightness of Saturn's rings
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
        RingLight rings) {

    /** A disk without rings. */
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
                RingLight.NONE);
    }

    /** The same fit with the disk at another place or in another posture. */
    public FittedDisk at(Disk other) {
        return new FittedDisk(
                other,
                shading,
                background,
                brightness,
                noise,
                centreSigmaPx,
                radiusSigmaPx,
                northSigmaDeg,
                residual,
                rings);
    }

    /** The same fit on the plane binned by a factor. */
    public FittedDisk binned(int factor) {
        Disk small = disk.binned(factor);
        return at(small).with(shading.carried(disk, small));
    }

    /** The same fit with another standard error of the north angle. */
    public FittedDisk withNorthSigma(double sigmaDeg) {
        return new FittedDisk(
                disk, shading, background, brightness, noise, centreSigmaPx, radiusSigmaPx, sigmaDeg, residual, rings);
    }

    /** The same fit on the plane as {@link Unsmear} leaves it. */
    public FittedDisk cleared(Unsmear.Extent extent) {
        return with(shading.drawnOut(Unsmear.left(shading, extent)));
    }

    /** The same fit with another exponent of the shading. */
    public FittedDisk withMinnaert(double minnaert) {
        return with(new Shading(minnaert, shading.blurPx(), shading.smear()));
    }

    private FittedDisk with(Shading other) {
        return new FittedDisk(
                disk,
                other,
                background,
                brightness,
                noise,
                centreSigmaPx,
                radiusSigmaPx,
                northSigmaDeg,
                residual,
                rings);
    }
}
