package org.epochrome.colour;

import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.text.Message;

/**
 * From linear light to the screen.
 *
 * @param brightness where the brightest part of the disk is shown, as a part of full scale, 0.05 to 1
 * @param black what is shown black, as a part of full scale, 0 to 0.9
 * @param contrast steepness of the curve in the middle tones, 0.2 to 5; 1 leaves them as they are
 * @param saturation factor on the colours' strength, 0 (grey) to 5
 */
public record Tone(
        @Choice double brightness,
        @Choice double black,
        @Choice double contrast,
        @Choice double saturation) implements Choices<Tone> {
    /** Common practice, no source: the brightest part near 80 % of full scale, all else as the eye would see it. */
    public static final Tone DEFAULT = new Tone(0.8, 0, 1, 1);

    /** Lightness up to which the curve is left alone; from here on it bends, so that nothing is clipped. */
    private static final double SHOULDER = 0.9;

    /** Colours of which no part exceeds this are below the shoulder. */
    private static final double ALONE_UP_TO = Math.pow(SHOULDER / Oklab.MOST_LIGHTNESS, 3);

    /** Lightness that contrast leaves as it is: a grey of 0.58 of full scale. */
    private static final double PIVOT = 0.66;

    public Tone {
        check(Message.of("value.tone.brightness"), brightness, 0.05, 1);
        check(Message.of("value.tone.black"), black, 0, 0.9);
        check(Message.of("value.tone.contrast"), contrast, 0.2, 5);
        check(Message.of("value.tone.saturation"), saturation, 0, 5);
    }

    private static void check(Message what, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(Message.text("value.tone", what, least, most, value));
        }
    }

    /** The curve on OKLab's lightness: black point, shoulder, contrast; rises everywhere above black, stays below 1. */
    double curve(double lightness) {
        double blackLightness = black == 0 ? 0 : Oklab.cubeRoot(Srgb.decode(black));
        double above = (lightness - blackLightness) / (1 - blackLightness);
        if (!(above > 0)) {
            return 0;
        }
        if (above > SHOULDER) {
            double room = 1 - SHOULDER;
            above = 1 - room * Math.exp(-(above - SHOULDER) / room);
        }
        if (contrast == 1) {
            return above;
        }
        double rising = Math.pow(above, contrast);
        double falling = Math.pow((1 - above) / (1 - PIVOT) * PIVOT, contrast) / PIVOT * (1 - PIVOT);
        return rising / (rising + falling);
    }

    /**
     * Linear sRGB to linear sRGB as it is shown, in place: the curve on lightness, chroma scaled with it, and reduced as
     * far as the screen's gamut demands, at the same hue and lightness.
     */
    public void apply(double[] colour) {
        if (leavesAlone(colour)) {
            return;
        }
        Oklab.fromLinear(colour);
        double lightness = curve(colour[0]);
        double scale = colour[0] > 0 ? saturation * lightness / colour[0] : 0;
        Gamut.fit(lightness, scale * colour[1], scale * colour[2], colour);
    }

    /**
     * Whether a colour is shown as it is, by what is quick to see: OKLab's lightness is at most
     * {@link Oklab#MOST_LIGHTNESS} times the cube root of the largest part.
     */
    private boolean leavesAlone(double[] colour) {
        return black == 0
                && contrast == 1
                && saturation == 1
                && Math.min(colour[0], Math.min(colour[1], colour[2])) >= 0
                && Math.max(colour[0], Math.max(colour[1], colour[2])) <= ALONE_UP_TO;
    }
}
