package org.epochrome.moon;

/**
 * Where a disk fit looks for the limb, for wings and for the sky.
 *
 * @param depthBlurs how far inside the limb it begins, blurs
 * @param farRadii how far from the disk's centre it ends, radii
 */
public record LimbZone(double depthBlurs, double farRadii) {
    /** Whether some of a companion at a place lies in the zone of a frame with a blur, pixels. */
    public boolean holds(MoonFrame frame, MoonOrShadow companion, SkyPoint place, double blurPx) {
        double radius = companion.radius() * frame.radiusPx();
        double beyond = frame.beyondLimbPx(frame.x(place), frame.y(place));
        return beyond > -depthBlurs * blurPx - radius && beyond < (farRadii - 1) * frame.radiusPx() + radius;
    }
}
