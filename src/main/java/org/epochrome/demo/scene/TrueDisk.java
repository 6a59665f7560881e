package org.epochrome.demo.scene;

/**
 * Where the planet really is in a picture.
 *
 * @param x where the body's centre falls, dispersion included (the mean over the passband)
 * @param y the same
 * @param equatorialRadiusPx half the apparent equatorial diameter
 * @param northAngleDeg from image up to the projected north pole, counter-clockwise positive as displayed
 * @param mirrored whether the image has an odd number of reflections
 */
public record TrueDisk(double x, double y, double equatorialRadiusPx, double northAngleDeg, boolean mirrored) {}
