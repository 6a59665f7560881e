package org.epochrome.turn;

import org.epochrome.image.Plane;

/**
 * A frame as it would have looked at the epoch, on the output's pixels.
 *
 * @param picture brightness above the sky, 1 for the even globe's brightest part; NaN where the frame holds no data
 * @param trust 0 to 1: how much of a pixel is detail carried along from a place that the frame saw well
 * @param shade the light that an even globe, with its rings if it has some, would have there, in the same unit
 */
public record Turned(Plane picture, Plane trust, Plane shade) {}
