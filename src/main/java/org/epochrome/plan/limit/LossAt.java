package org.epochrome.plan.limit;

/**
 * What turning leaves at a distance from the disk's centre, along the rotation.
 *
 * @param distance a part of the radius
 * @param worstFrame factor by which the blur of the worst frame grows; infinite if it did not see the point
 * @param worstBand the same of the best frame of the worst band; infinite if a band has no frame that saw the point
 */
public record LossAt(double distance, double worstFrame, double worstBand) {}
