package org.epochrome.demo;

import org.epochrome.image.Plane;

/**
 * A picture and the truth about it.
 *
 * @param pixels linear levels; 1 is the full scale of a 16-bit file
 * @param disk where the planet is
 */
public record Rendered(Plane pixels, TrueDisk disk) {}
