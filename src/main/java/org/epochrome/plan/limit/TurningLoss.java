package org.epochrome.plan.limit;

/**
 * What turning cannot mend. A point that stands at the angle b from the central meridian at the epoch stood at b + t when a frame
 * was recorded whose turn is t. That frame saw it foreshortened by cos(b + t), the picture shows it by cos b: turned to the
 * epoch, its blur along the rotation is cos b / cos(b + t) times as wide as that of a frame recorded at the epoch. Beyond the limb,
 * b + t over 90 degrees, it saw nothing. Both hold along the equator of a planet that is seen from its equator's plane.
 *
 * @param turnDeg between a frame and the epoch, 0 to 180
 */
public record TurningLoss(double turnDeg) {
    /** Where a sequence is judged, a part of the radius, and by how much the blur may grow there: choices of ours. */
    public static final double JUDGED_AT = 0.8;

    public static final double GROWTH = 1.25;

    /**
     * By what factor the blur grows along the rotation, on the side where it grows; infinite where the frame saw nothing.
     *
     * @param distance from the disk's centre along the equator, a part of the radius, 0 to 1
     */
    public double growth(double distance) {
        double seen = Math.asin(distance) + Math.toRadians(turnDeg);
        return seen >= Math.PI / 2 ? Double.POSITIVE_INFINITY : Math.sqrt(1 - distance * distance) / Math.cos(seen);
    }

    /** Width of the crescent that the frame has not seen, a part of the radius. */
    public double unseen() {
        return 1 - Math.cos(Math.toRadians(Math.min(90, turnDeg)));
    }

    /** The largest turn by which the blur grows by a quarter at 0.8 of the radius: 8.2 degrees. */
    public static double largestTurnDeg() {
        return Math.toDegrees(Math.acos(Math.sqrt(1 - JUDGED_AT * JUDGED_AT) / GROWTH) - Math.asin(JUDGED_AT));
    }
}
