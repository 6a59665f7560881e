package org.epochrome.plan.limit;

import org.apache.commons.math3.special.BesselJ;

/**
 * The image of a point through a circular aperture with a central obstruction: the Airy pattern of an annulus (Born and Wolf,
 * Principles of Optics, section 8.6.2; Schroeder, Astronomical Optics, section 10.2). Distances are in wavelengths over the
 * aperture's diameter.
 *
 * @param obstruction diameter of the obstruction as a part of the aperture, 0 to 0.9
 */
public record Diffraction(double obstruction) {
    /** Beyond the first dark ring of every obstruction. */
    private static final double FARTHEST = 1.25;

    private static final int HALVINGS = 60;

    /** Brightness at a distance from the centre, 1 there. */
    public double brightness(double distance) {
        double x = Math.PI * distance;
        double area = 1 - obstruction * obstruction;
        double amplitude = (disk(x) - obstruction * obstruction * disk(obstruction * x)) / area;
        return amplitude * amplitude;
    }

    /** Amplitude of an open aperture, 1 in the centre. */
    private static double disk(double x) {
        return x < 1e-6 ? 1 : 2 * BesselJ.value(1, x) / x;
    }

    /** Full width at half maximum: 1.029 without obstruction, 0.95 with one of 0.4. An obstruction makes it narrower, its rings brighter. */
    public double fwhm() {
        double inside = 0;
        double outside = FARTHEST / 2;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = 0.5 * (inside + outside);
            if (brightness(middle) > 0.5) {
                inside = middle;
            } else {
                outside = middle;
            }
        }
        return inside + outside;
    }
}
