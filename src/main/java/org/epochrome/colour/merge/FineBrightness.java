package org.epochrome.colour.merge;

import org.epochrome.colour.ColourCube;
import org.epochrome.image.Plane;

/**
 * The band that a finished picture's fine brightness comes from.
 *
 * @param band linear above the sky, in any unit
 * @param blurPx its blur, pixels
 * @param coloursBlurPx blur of the colours, pixels
 */
public record FineBrightness(Plane band, double blurPx, double coloursBlurPx) {
    /** A picture with this fine brightness in the place of its own. */
    public ColourCube laidOn(ColourCube cube) {
        return Luminance.exchanged(cube, band, coloursBlurPx, blurPx);
    }
}
