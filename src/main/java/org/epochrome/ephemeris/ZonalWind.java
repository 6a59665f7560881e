package org.epochrome.ephemeris;

import java.util.Optional;
import org.apache.commons.math3.analysis.interpolation.AkimaSplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * How much faster than its rotation system a latitude of a giant planet turns: its east-west winds at the cloud tops.
 *
 * <p>Jupiter: the profile that Tollefson et al. 2017 (Icarus 296, 163) measured by correlation of maps from the Hubble Space
 * Telescope, in the version of 2017 February 1 and 2 (filter F631N, planetographic latitudes every 0.05 degrees, to 4 to 9
 * m/s), read off at every jet's peak and about every degree between, rounded to two digits; beyond 72 degrees nothing was
 * measured, and the wind is taken to fade. Saturn: representative values after Sanchez-Lavega et al. 2000 (Icarus 147,
 * 405), written down from memory, both hemispheres alike, to about 2 degrees and 30 m/s. Winds change over the years by some
 * 10 m/s, and spots need not drift with the wind at their latitude. Between the nodes a smooth Akima spline (1970) without
 * overshoot.
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
        {-75, 0},
        {-72, -2},
        {-70, -1.4},
        {-69, -0.5},
        {-68, 12},
        {-67, 36},
        {-66, 29},
        {-65, 12},
        {-64.3, 5},
        {-63, 5.8},
        {-62, 14},
        {-61.3, 22},
        {-60.5, 10},
        {-59.5, 0.7},
        {-58.2, -4.4},
        {-57, -5.4},
        {-56, -11},
        {-55, 1.7},
        {-54, 19},
        {-53, 35},
        {-52.3, 39},
        {-51.5, 19},
        {-50.5, 3.7},
        {-49.5, -5},
        {-48.2, -18},
        {-47.2, -10},
        {-46.5, 4.9},
        {-46, 17},
        {-45, 24},
        {-44, 34},
        {-43.4, 40},
        {-42.5, 30},
        {-41.5, 12},
        {-40.5, 3.1},
        {-39.6, -6},
        {-38.5, 4.4},
        {-37.5, 27},
        {-36.1, 51},
        {-35, 31},
        {-34, 3.9},
        {-33, -12},
        {-32.5, -15.5},
        {-31.5, -8.4},
        {-30.5, 4.1},
        {-29.5, 23},
        {-28.5, 28},
        {-27, 34},
        {-25.6, 37},
        {-24.5, 24},
        {-23.5, 2.4},
        {-22.5, -14},
        {-21.5, -33},
        {-20.3, -58},
        {-19.3, -51},
        {-18, -34},
        {-17, -14},
        {-16, 0.9},
        {-15, 16},
        {-14, 24},
        {-13, 32},
        {-12, 40},
        {-11, 45},
        {-10, 51},
        {-9, 79},
        {-8, 135},
        {-7.2, 147},
        {-6, 130},
        {-5, 108},
        {-4, 90},
        {-3, 80},
        {-2, 75},
        {-1, 71},
        {0, 71},
        {1, 72},
        {2, 78},
        {3, 87},
        {4, 94},
        {5, 100},
        {6.2, 108},
        {7, 105},
        {8, 104},
        {9, 96},
        {10, 83},
        {11, 63},
        {12, 45},
        {13, 28},
        {14, 14},
        {15, 2.4},
        {16, -9.2},
        {17, -20},
        {17.6, -23},
        {18.5, -16},
        {19.5, -0.5},
        {20, 11},
        {21, 48},
        {22, 91},
        {23, 119},
        {23.9, 141},
        {24.5, 132},
        {25, 120},
        {26, 76},
        {27, 44},
        {28, 27},
        {29, 14},
        {29.5, 1.2},
        {30, -12},
        {31.1, -27},
        {32, -19},
        {33, 2.1},
        {34, 24},
        {35, 36},
        {36, 37},
        {37, 19},
        {38, -7.4},
        {38.9, -17},
        {40, -11},
        {41, -3.8},
        {42, 14},
        {42.55, 24},
        {43.5, 12},
        {44.5, 2.1},
        {46, 6.1},
        {47.25, 16},
        {48, 8.7},
        {49, 2.1},
        {50, -3.7},
        {52, -6.6},
        {53.5, -2.6},
        {55, 14},
        {56.05, 24},
        {57, 10},
        {58, -1.7},
        {59, -4.2},
        {60.65, -6.6},
        {62, -1.4},
        {63, 6.7},
        {64.6, 17},
        {65.5, 12},
        {66.5, 10},
        {67.5, 19},
        {68.4, 31},
        {69, 24},
        {70, 7.4},
        {72, 0},
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
