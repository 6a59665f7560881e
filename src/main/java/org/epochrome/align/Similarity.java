package org.epochrome.align;

/**
 * How detail lies against other detail: moved, and slightly larger and turned about the middle of the window.
 *
 * @param shift of the middle
 * @param scale by which it is larger, as a part of 1
 * @param scaleSigma its standard error
 * @param turnRad by which it is turned, counter-clockwise as displayed
 * @param turnSigmaRad its standard error
 */
public record Similarity(Shift shift, double scale, double scaleSigma, double turnRad, double turnSigmaRad) {}
