package org.epochrome.colour.merge;

import org.epochrome.colour.ColourCube;
import org.epochrome.colour.PerceivedLightness;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;

/**
 * Gives a colour picture the fine brightness of another band, usually of frames without a colour filter, which have more
 * light and so less noise.
 *
 * <p>Brightness is Oklab's lightness, so that bands count as they are seen. At a given chromaticity lightness grows with
 * the cube root of the linear colour; so exchanging it while keeping the chromaticity is to multiply the linear colour by the
 * cube of the lightnesses' ratio, and ratios of the bands stay what they were. Only the fine part is exchanged: broad
 * differences between the bands are colour. If the band is blurred more than the colours, what is finer than its blur stays
 * theirs. Where the band or a colour holds no data nothing is exchanged, and its surroundings do not count it as dark.
 */
public final class Luminance {
    /** Width of what counts as broad, in blurs. */
    private static final double BROAD = 8;
    /** Parts of the bright disk between which the exchange sets in: the sky has no detail. */
    private static final double DARK = 0.02;

    private static final double BRIGHT = 0.1;
    /** No detail changes brightness by more than this factor. */
    private static final double MOST = 2;

    private Luminance() {}

    /**
     * The picture with the fine brightness of a band.
     *
     * @param detail the band, linear above the sky, in any unit
     * @param colourBlurPx blur of the colours, pixels
     * @param detailBlurPx blur of the band, pixels
     */
    public static ColourCube exchanged(ColourCube cube, Plane detail, double colourBlurPx, double detailBlurPx) {
        Plane whole = whole(cube, detail);
        Plane own = times(brightness(cube), whole);
        Plane other = times(filled(detail), whole);
        double wider = Math.sqrt(Math.max(0, detailBlurPx * detailBlurPx - colourBlurPx * colourBlurPx));
        Plane alike = blurred(own, whole, wider);
        double broad = BROAD * Math.max(colourBlurPx, detailBlurPx);
        Plane ownBroad = blurred(alike, whole, broad);
        Plane otherBroad = blurred(other, whole, broad);
        float top = top(own);
        float otherTop = top(other);
        Plane factor = new Plane(own.width(), own.height());
        for (int i = 0; i < factor.data().length; i++) {
            double lit = Math.min(alike.data()[i] / top, other.data()[i] / otherTop);
            double part = whole.data()[i] * Math.max(0, Math.min(1, (lit - DARK) / (BRIGHT - DARK)));
            double ratio = part > 0
                    ? other.data()[i]
                            * ownBroad.data()[i]
                            / ((double) otherBroad.data()[i] * alike.data()[i])
                    : 1;
            factor.data()[i] = (float) (1 + part * (Math.max(1 / MOST, Math.min(MOST, ratio)) - 1));
        }
        return new ColourCube(times(cube.red(), factor), times(cube.green(), factor), times(cube.blue(), factor));
    }

    /** 1 where the colours and the band hold data, else 0. */
    private static Plane whole(ColourCube cube, Plane detail) {
        Plane whole = new Plane(detail.width(), detail.height());
        for (int i = 0; i < whole.data().length; i++) {
            whole.data()[i] = cube.isWhole(i) && !Float.isNaN(detail.data()[i]) ? 1 : 0;
        }
        return whole;
    }

    /** A blurred plane, as a mean of what is there. */
    private static Plane blurred(Plane plane, Plane whole, double sigmaPx) {
        Plane blurred = Gaussian.blur(times(plane, whole), sigmaPx);
        Plane part = Gaussian.blur(whole, sigmaPx);
        for (int i = 0; i < blurred.data().length; i++) {
            blurred.data()[i] = part.data()[i] > 0 ? blurred.data()[i] / part.data()[i] : 0;
        }
        return blurred;
    }

    /** The cube of the lightness of every pixel, with the planes balanced to equal light. */
    private static Plane brightness(ColourCube cube) {
        Plane red = filled(cube.red());
        Plane green = filled(cube.green());
        Plane blue = filled(cube.blue());
        double ofRed = 1 / light(red);
        double ofGreen = 1 / light(green);
        double ofBlue = 1 / light(blue);
        double whole = light(green);
        Plane result = new Plane(red.width(), red.height());
        for (int i = 0; i < result.data().length; i++) {
            double lightness = PerceivedLightness.of(
                    whole * ofRed * red.data()[i], whole * ofGreen * green.data()[i], whole * ofBlue * blue.data()[i]);
            result.data()[i] = (float) (lightness * lightness * lightness);
        }
        return result;
    }

    private static double light(Plane plane) {
        double sum = 0;
        for (float v : plane.data()) {
            sum += v;
        }
        return sum;
    }

    private static float top(Plane plane) {
        float top = Float.MIN_VALUE;
        for (float v : Gaussian.blur(plane, 2).data()) {
            top = Math.max(top, v);
        }
        return top;
    }

    private static Plane filled(Plane plane) {
        Plane filled = plane.copy();
        for (int i = 0; i < filled.data().length; i++) {
            filled.data()[i] = Float.isNaN(filled.data()[i]) ? 0 : filled.data()[i];
        }
        return filled;
    }

    private static Plane times(Plane plane, Plane factor) {
        Plane result = plane.copy();
        for (int i = 0; i < result.data().length; i++) {
            result.data()[i] *= factor.data()[i];
        }
        return result;
    }
}
