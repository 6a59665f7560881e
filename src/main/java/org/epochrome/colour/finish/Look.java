package org.epochrome.colour.finish;

import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;

/**
 * How a finished picture looks. The linear cube does not depend on it.
 *
 * @param white which colour the disk gets
 * @param sharpening how detail is brought out
 * @param tone from linear light to the screen
 * @param grading what is changed by hand, channel by channel
 * @param framing what part is kept and how it lies
 */
public record Look(
        @Choice WhiteBalance white,
        @Choice(key = "detail") Sharpening sharpening,
        @Choice Tone tone,
        @Choice Grading grading,
        @Choice Framing framing)
        implements Choices<Look> {
    /** The planet's own colour, gently sharpened, the brightest part near 80 %. */
    public static final Look DEFAULT = new Look(
            WhiteBalance.of(White.PHOTOMETRIC), Sharpening.DEFAULT, Tone.DEFAULT, Grading.NONE, Framing.AS_SHOT);

    /** A look without changes by hand. */
    public Look(WhiteBalance white, Sharpening sharpening, Tone tone, Framing framing) {
        this(white, sharpening, tone, Grading.NONE, framing);
    }

    /** The look on bands of which published albedos say nothing: the whole disk is grey where it would get the planet's own colour. */
    public Look onOtherBands() {
        return white.white() == White.PHOTOMETRIC ? with(Look::white, WhiteBalance.of(White.DISK)) : this;
    }
}
