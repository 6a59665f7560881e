package org.epochrome.align;

/**
 * What the detail says about two frames: by how much the one lies off the other.
 *
 * @param from index of the frame that is compared with
 * @param to index of the frame that lies off by the shift
 * @param shift the displacement
 */
public record Link(int from, int to, Shift shift) {}
