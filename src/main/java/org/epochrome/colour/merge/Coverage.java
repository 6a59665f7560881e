package org.epochrome.colour.merge;

import org.epochrome.image.Plane;

/**
 * How well the pixels of a merged plane are founded.
 *
 * @param frames number of planes that were used in a pixel and weigh at least a tenth of its weightiest
 * @param weight sum of the weights that were used
 */
public record Coverage(Plane frames, Plane weight) {}
