package org.epochrome.colour;

/**
 * How a finished picture looks. The linear cube does not depend on it.
 *
 * @param white which colour the disk gets
 * @param tone from linear light to the screen
 */
public record Look(WhiteBalance white, Tone tone) {
    /** The planet's own colour, the brightest part near 80 %. */
    public static final Look DEFAULT = new Look(WhiteBalance.of(White.PHOTOMETRIC), Tone.DEFAULT);
}
