package org.epochrome.disk;

import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.image.blur.Smear;

/**
 * What a fit found in one plane.
 *
 * @param disk place, size and orientation
 * @param shading limb darkening and blur
 * @param background sky level at the disk's centre, in the plane's units
 * @param brightness factor of the even globe, in the plane's units above the sky
 * @param noise standard deviation of the sky, in the plane's units
 * @param errors standard errors of centre, radius and north angle
 * @param residual rms of what the model leaves within two blurs inside the limb, as a part of the disk's brightness
 * @param rings brightness of the rings
 * @param skySlope how the sky's brightness changes over the frame
 * @param passband how wide the passband is by the smear
 */
public record FittedDisk(
        Disk disk,
        Shading shading,
        double background,
        double brightness,
        double noise,
        FitErrors errors,
        double residual,
        RingLight rings,
        SkySlope skySlope,
        PassbandWidth passband) {

    /** A disk without rings under an even sky. */
    public FittedDisk(
            Disk disk,
            Shading shading,
            double background,
            double brightness,
            double noise,
            FitErrors errors,
            double residual) {
        this(
                disk,
                shading,
                background,
                brightness,
                noise,
                errors,
                residual,
                RingLight.NONE,
                SkySlope.NONE,
                PassbandWidth.UNKNOWN);
    }

    /** Standard error of the centre, per axis, pixels. */
    public double centreSigmaPx() {
        return errors.allOfCentrePx();
    }

    /** Standard error of the equatorial radius, pixels; 0 if it was given. */
    public double radiusSigmaPx() {
        return errors.radiusPx();
    }

    /** Standard error of the north angle, degrees; 0 if it was given. */
    public double northSigmaDeg() {
        return errors.northDeg();
    }

    /** The fit with the disk at another place or in another orientation. */
    public FittedDisk at(Disk other) {
        return with(other, shading, errors, skySlope, passband);
    }

    /** The fit on the pixels of a part of the plane, whose sky is even. */
    public FittedDisk on(Region part) {
        return at(disk.movedBy(-part.left(), -part.top()));
    }

    /** The fit on the plane binned by a factor. */
    public FittedDisk binned(int factor) {
        Disk small = disk.binned(factor);
        return with(small, shading.carried(disk, small), errors, skySlope.times(factor), passband);
    }

    /** The fit with another standard error of the north angle. */
    public FittedDisk withNorthSigma(double sigmaDeg) {
        return with(disk, shading, errors.withNorth(sigmaDeg), skySlope, passband);
    }

    /** The fit with a less certain centre, by a standard error per axis in pixels. */
    public FittedDisk withCentreUncertainty(double centrePx) {
        return with(disk, shading, errors.addedToCentre(centrePx), skySlope, passband);
    }

    /** The fit with a less certain centre, by a standard error per axis, and a less certain radius if it was not given; pixels. */
    public FittedDisk withCentreUncertainty(double centrePx, double radiusPx) {
        return with(disk, shading, errors.addedToCentre(centrePx).addedToRadius(radiusPx), skySlope, passband);
    }

    /**
     * The fit with a radius that frames have in common: its error moves the centre as far as that depends on it.
     *
     * @param sigmaPx standard error of the radius
     * @param byRadius how far the centre moves with the radius
     */
    public FittedDisk withCommonRadius(double sigmaPx, FitErrors.CentreByRadius byRadius) {
        return with(disk, shading, errors.withCommonRadius(sigmaPx, byRadius), skySlope, passband);
    }

    /** The fit with what another one found out about the passband. */
    public FittedDisk withPassband(PassbandWidth other) {
        return with(disk, shading, errors, skySlope, other);
    }

    /** The fit with another smear. */
    public FittedDisk withSmear(Smear smear) {
        return with(disk, shading.smearedBy(smear), errors, skySlope, passband);
    }

    /** The fit with another exponent of the shading. */
    public FittedDisk withMinnaert(double minnaert) {
        return with(disk, shading.withMinnaert(minnaert), errors, skySlope, passband);
    }

    /** The fit with another noise. */
    public FittedDisk withNoise(double otherNoise) {
        return new FittedDisk(
                disk, shading, background, brightness, otherNoise, errors, residual, rings, skySlope, passband);
    }

    /** The frame with an even sky, of the level {@link #background}. */
    public Plane withEvenSky(Plane frame) {
        return skySlope.equals(SkySlope.NONE) ? frame : skySlope.evened(frame, disk);
    }

    private FittedDisk with(
            Disk otherDisk,
            Shading otherShading,
            FitErrors otherErrors,
            SkySlope otherSlope,
            PassbandWidth otherPassband) {
        return new FittedDisk(
                otherDisk,
                otherShading,
                background,
                brightness,
                noise,
                otherErrors,
                residual,
                rings,
                otherSlope,
                otherPassband);
    }
}
