package org.epochrome.colour.merge;

import org.epochrome.image.Plane;

/**
 * One of the planes to be merged.
 *
 * @param picture NaN where it holds no data
 * @param weight of the same size, 0 or more
 * @param noise standard deviation of its pixels; 0 if unknown
 */
public record Layer(Plane picture, Plane weight, float noise) {}
