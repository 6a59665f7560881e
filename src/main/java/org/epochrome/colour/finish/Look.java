package org.epochrome.colour.finish;

import org.epochrome.colour.Tone;
import org.epochrome.colour.White;
import org.epochrome.colour.WhiteBalance;

/**
 * How a finished picture looks. The linear cube does not depend on it.
 *
 * @param white which colour the disk gets
 * @param sharpening how detail is brought out
 * @param tone from linear light to the screen
 * @param framing what part is kept and how it lies
 */
public record Look(WhiteBalance white, Sharpening sharpening, Tone tone, Framing framing) {
    /** The planet's own colour, gently sharpened, the brightest part near 80 %. */
    public static final Look DEFAULT =
            new Look(WhiteBalance.of(White.PHOTOMETRIC), Sharpening.DEFAULT, Tone.DEFAULT, Framing.AS_SHOT);
}
