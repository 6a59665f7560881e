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
        double residual) {

    FittedDisk withNorthSigma(double sigmaDeg) {
        return new FittedDisk(
                disk, shading, background, brightness, noise, centreSigmaPx, radiusSigmaPx, sigmaDeg, residual);
    }
}
