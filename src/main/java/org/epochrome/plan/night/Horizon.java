package org.epochrome.plan.night;

import java.util.List;

/**
 * The altitude below which a site's view is obstructed, as it appears there (with refraction), degrees.
 *
 * @param azimuthDeg of the profile's points, growing, from north through east, 0 to below 360; never empty
 * @param altitudeDeg apparent altitude at each, -5 to 90
 */
public record Horizon(List<Double> azimuthDeg, List<Double> altitudeDeg) {
    public Horizon {
        azimuthDeg = List.copyOf(azimuthDeg);
        altitudeDeg = List.copyOf(altitudeDeg);
    }

    /** The same altitude all round. */
    public static Horizon level(double altitudeDeg) {
        return new Horizon(List.of(0.0), List.of(altitudeDeg));
    }

    /**
     * A profile from the lines of a CSV file: azimuth and altitude in degrees, a header and comments after {@code #} are
     * skipped.
     *
     * @throws IllegalArgumentException one sentence for the user
     */
    public static Horizon parse(List<String> lines) {
        throw new UnsupportedOperationException();
    }

    /** The obstruction's apparent altitude in a direction, degrees; linear between the points. */
    public double altitudeDeg(double azimuthDeg) {
        throw new UnsupportedOperationException();
    }
}
