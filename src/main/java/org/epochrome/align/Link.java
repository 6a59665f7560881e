package org.epochrome.align;

/**
 * What a witness says about two frames: by how much the one lies off the other, beyond what the limb says.
 *
 * @param from index of the frame that is compared with
 * @param to index of the frame that lies off by the shift
 * @param shift the displacement
 * @param witness who says so
 */
public record Link(int from, int to, Shift shift, Witness witness) {}
