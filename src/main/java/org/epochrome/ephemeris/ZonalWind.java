package org.epochrome.ephemeris;

import java.util.Optional;
import org.apache.commons.math3.analysis.interpolation.AkimaSplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * How much faster than its rotation system a latitude of a giant planet turns: its east-west winds at the cloud tops.
 *
 * <p>The jets are representative values after the published profiles, written down from memory, not digitised: Jupiter
 * after Porco et al. 2003 (Science 299, 1541) and Garcia-Melendo &amp; Sanchez-Lavega 2001 (Icarus 152, 316), latitudes of
 * jets to about 1 degree, speeds to about 10 m/s; Saturn after Sanchez-Lavega et al. 2000 (Icarus 147, 405), both
 * hemispheres alike, to about 2 degrees and 30 m/s. Winds change over the years by as much, and spots need not drift
 * with the wind at their latitude. Between the nodes a smooth Akima spline (1970) without overshoot.
 *
 * <p>Over a turn of 10 minutes, 10 m/s are 0.005 degrees on Jupiter: the profile matters over hours, not minutes.
 */
public final class ZonalWind {
    private static final double DAY_S = 86400.0;

    /** Poleward of this the circles get so small that no rate makes sense; the rate of this latitude is used. */
    private static final double LAST_LATITUDE_DEG = 85;

    /** Planetographic latitude (degrees), wind (m/s, eastward against System III). */
    private static final double[][] JUPITER_NODES = {
        {-90, 0},
        {-80, 0},
        {-71, 0},
        {-67, 12},
        {-64, 0},
        {-61, 22},
        {-57, 0},
        {-53, 34},
        {-49.5, -3},
        {-47, 12},
        {-43.5, 36},
        {-39.5, 0},
        {-36.4, 33},
        {-32.4, -22},
        {-29, 22},
        {-26.8, 44},
        {-23, 5},
        {-19.7, -60},
        {-16, -25},
        {-12, 40},
        {-9, 100},
        {-7, 135},
        {-4.5, 105},
        {-2, 85},
        {0, 80},
        {2, 85},
        {4.5, 100},
        {6.8, 108},
        {9, 85},
        {12, 25},
        {15, -15},
        {17.3, -24},
        {20, 25},
        {22, 105},
        {23.8, 145},
        {26, 70},
        {28.5, -5},
        {31.5, -32},
        {33.5, 5},
        {35.6, 32},
        {39.3, -13},
        {42.5, 18},
        {45.5, -6},
        {48.2, 26},
        {52, 2},
        {56.5, 20},
        {60.5, -4},
        {65.5, 16},
        {69, 0},
        {80, 0},
        {90, 0}
    };

    private static final double[][] SATURN_NODES = {
        {-90, 0},
        {-85, 15},
        {-81, 60},
        {-77.5, 100},
        {-74, 45},
        {-70, 5},
        {-66, 20},
        {-61, 85},
        {-56, 0},
        {-51.5, 30},
        {-47, 100},
        {-43, 40},
        {-39.5, -5},
        {-35, 10},
        {-31, 40},
        {-25, 150},
        {-20, 265},
        {-15, 365},
        {-10, 435},
        {-5, 445},
        {0, 430},
        {5, 445},
        {10, 435},
        {15, 365},
        {20, 265},
        {25, 150},
        {31, 40},
        {35, 10},
        {39.5, -5},
        {43, 40},
        {47, 100},
        {51.5, 30},
        {56, 0},
        {61, 85},
        {66, 20},
        {70, 5},
        {74, 45},
        {77.5, 100},
        {81, 60},
        {85, 15},
        {90, 0}
    };

    private static final ZonalWind JUPITER = new ZonalWind(Body.JUPITER, JUPITER_NODES);
    private static final ZonalWind SATURN = new ZonalWind(Body.SATURN, SATURN_NODES);

    private final Body body;
    private final PolynomialSplineFunction windMs;

    private ZonalWind(Body body, double[][] nodes) {
        this.body = body;
        double[] latitudes = new double[nodes.length];
        double[] winds = new double[nodes.length];
        for (int i = 0; i < nodes.length; i++) {
            latitudes[i] = nodes[i][0];
            winds[i] = nodes[i][1];
        }
        windMs = new AkimaSplineInterpolator().interpolate(latitudes, winds);
    }

    /** The profile of a body; only Jupiter and Saturn have one. */
    public static Optional<ZonalWind> of(Body body) {
        return switch (body) {
            case JUPITER -> Optional.of(JUPITER);
            case SATURN -> Optional.of(SATURN);
            default -> Optional.empty();
        };
    }

    /** Eastward wind against System III in m/s at a planetographic latitude, -90 to 90 degrees. */
    public double windMs(double latitudeDeg) {
        return windMs.value(latitudeDeg);
    }

    /**
     * Degrees of longitude a day by which that latitude runs ahead of a rotation system, in the sense of rotation.
     *
     * @param latitudeDeg planetographic, -90 to 90
     * @param system one of the body's
     */
    public double extraTurnDegPerDay(double latitudeDeg, RotationSystem system) {
        double latitude = Math.max(-LAST_LATITUDE_DEG, Math.min(LAST_LATITUDE_DEG, latitudeDeg));
        double wind = Math.toDegrees(windMs(latitude) * DAY_S / axisDistanceM(latitude));
        RotationElements elements = RotationElements.of(body);
        return wind + elements.turnRateDegPerDay(RotationSystem.III) - elements.turnRateDegPerDay(system);
    }

    /** Distance from the rotation axis at a planetographic latitude, metres. */
    private double axisDistanceM(double latitudeDeg) {
        double latitude = Math.toRadians(latitudeDeg);
        double cos = Math.cos(latitude);
        return 1000 * body.equatorialRadiusKm() * cos / Math.hypot(cos, body.axisRatio() * Math.sin(latitude));
    }
}
