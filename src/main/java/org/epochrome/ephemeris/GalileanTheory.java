package org.epochrome.ephemeris;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.StringTokenizer;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * Where the moons of Jupiter stand around it: theory E2x3 (Lieske 1987, Astron. Astrophys. 176, 146), with the terms that
 * Meeus 1998, Astronomical Algorithms, 2nd ed., chapter 44 gives. The terms are a resource, read when first asked for.
 */
final class GalileanTheory {
    /**
     * Unit of the theory's distances, km: Lieske's radius of Jupiter. Kepler's third law with the theory's mean motions
     * and Jupiter's mass asks for 71412 to 71418.
     */
    private static final double UNIT_KM = 71420.0;

    private static final double DAYS_TO_J2000 = 2451545.0 - 2443000.5;
    private static final double[] MEAN_DISTANCE = {5.90569, 9.39657, 14.98832, 26.36273};

    /** Precession in longitude from B1950, to which the theory's longitudes refer, to J2000 (Meeus, chapter 44). */
    private static final double PRECESSION_RAD = Math.toRadians(0.5 * 1.3966626 + 0.25 * 0.0003088);
    /** Inclination of Jupiter's equator on its orbit: 3.120262 + 0.0006 T, T in centuries since 1900 (the same). */
    private static final double EQUATOR_DEG = 3.120262;

    private static final double EQUATOR_RATE_DEG = 0.0006 / 36525;
    // Jupiter's orbit on the ecliptic of J2000: Meeus, table 31.B (Simon et al. 1994, Astron. Astrophys. 282, 663).
    private static final double ORBIT_NODE_DEG = 100.464407;
    private static final double ORBIT_NODE_RATE_DEG = 0.1767232 / 36525;
    private static final double ORBIT_INCLINATION_DEG = 1.303267;
    private static final double ORBIT_INCLINATION_RATE_DEG = -0.0019877 / 36525;

    /** Angles that terms are made of, in this order. */
    private static final String[] ANGLES = {
        "l1", "l2", "l3", "l4", "pi1", "pi2", "pi3", "pi4", "om1", "om2", "om3", "om4", "psi", "G", "Gs", "Pi", "Phi",
        "deg", "L", "S"
    };
    // Their values at 1976-08-10 0h and daily rates, degrees; G without its inequality.
    private static final double[][] LINEAR_DEG = {
        {106.07719, 203.488955790}, {175.73161, 101.374724735}, {120.55883, 50.317609207}, {84.44459, 21.571071177},
        {97.0881, 0.16138586}, {154.8663, 0.04726307}, {188.1840, 0.00712734}, {335.2868, 0.00184000},
        {312.3346, -0.13279386}, {100.4411, -0.03263064}, {119.1942, -0.00717703}, {322.6186, -0.00175934},
        {316.5182, -0.00000208}, {30.23756, 0.0830925701}, {31.97853, 0.0334597339}, {13.469942, 0},
        {199.6766, 0.17379190}, {1, 0}
    };
    private static final int PSI = 12;
    private static final int G = 13;
    private static final int TRUE_LONGITUDE = 18;
    private static final int LONGITUDE_SUM = 19;

    private static final GalileanTheory LOADED = read();

    /** Per moon and per coordinate the terms: an amplitude, then a multiple of each angle. */
    private final double[][][][] terms;

    private GalileanTheory(double[][][][] terms) {
        this.terms = terms;
    }

    static GalileanTheory get() {
        return LOADED;
    }

    /** From Jupiter's centre to a moon in ICRS, km, at a TDB instant. */
    Vector3D positionKm(GalileanMoon moon, double daysSinceJ2000) {
        double[] angles = angles(daysSinceJ2000 + DAYS_TO_J2000);
        int index = moon.number() - 1;
        double[][][] own = terms[index];
        double sum = Math.toRadians(sum(own[0], angles, true));
        angles[TRUE_LONGITUDE] = angles[index] + sum;
        angles[LONGITUDE_SUM] = sum;
        double latitude = Math.atan(sum(own[1], angles, true));
        double distance = UNIT_KM * MEAN_DISTANCE[index] * (1 + sum(own[2], angles, false));
        Vector3D onEquator = new Vector3D(angles[TRUE_LONGITUDE] - angles[PSI], latitude).scalarMultiply(distance);
        return equator(daysSinceJ2000, angles[PSI]).toIcrs(onEquator);
    }

    /** Jupiter's equator: x towards its node on the orbit's plane, z along its north pole. */
    private static Axes equator(double daysSinceJ2000, double nodeB1950Rad) {
        double orbitNode = Math.toRadians(ORBIT_NODE_DEG + ORBIT_NODE_RATE_DEG * daysSinceJ2000);
        return Vsop87.ECLIPTIC
                .turnedAboutZ(orbitNode)
                .turnedAboutX(Math.toRadians(ORBIT_INCLINATION_DEG + ORBIT_INCLINATION_RATE_DEG * daysSinceJ2000))
                .turnedAboutZ(nodeB1950Rad + PRECESSION_RAD - orbitNode)
                .turnedAboutX(Math.toRadians(EQUATOR_DEG + EQUATOR_RATE_DEG * (daysSinceJ2000 + 36525)));
    }

    private static double[] angles(double days) {
        double[] angles = new double[ANGLES.length];
        for (int i = 0; i < LINEAR_DEG.length; i++) {
            angles[i] = Math.toRadians(LINEAR_DEG[i][0] + LINEAR_DEG[i][1] * days % 360.0);
        }
        double inequalityDeg = 0.33033 * Math.sin(Math.toRadians(163.679 + 0.0010512 * days))
                + 0.03439 * Math.sin(Math.toRadians(34.486 - 0.0161731 * days));
        angles[G] += Math.toRadians(inequalityDeg);
        return angles;
    }

    private static double sum(double[][] terms, double[] angles, boolean sines) {
        double sum = 0;
        for (double[] term : terms) {
            double argument = 0;
            for (int k = 0; k < angles.length; k++) {
                argument += term[k + 1] * angles[k];
            }
            sum += term[0] * (sines ? Math.sin(argument) : Math.cos(argument));
        }
        return sum;
    }

    private static GalileanTheory read() {
        double[][][][] terms = new double[GalileanMoon.values().length][3][][];
        try (InputStream stream = GalileanTheory.class.getResourceAsStream("galilean-moons.txt");
                var reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.US_ASCII))) {
            Map<String, Integer> coordinates = Map.of("longitude", 0, "latitude", 1, "radius", 2);
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (!line.startsWith("#")) {
                    var section = new StringTokenizer(line);
                    int coordinate = coordinates.get(section.nextToken());
                    int moon = Integer.parseInt(section.nextToken()) - 1;
                    terms[moon][coordinate] = terms(reader, Integer.parseInt(section.nextToken()));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new GalileanTheory(terms);
    }

    private static double[][] terms(BufferedReader reader, int count) throws IOException {
        Map<String, Integer> index = new HashMap<>();
        for (int i = 0; i < ANGLES.length; i++) {
            index.put(ANGLES[i], i);
        }
        double[][] terms = new double[count][ANGLES.length + 1];
        for (double[] term : terms) {
            var tokens = new StringTokenizer(reader.readLine());
            term[0] = Double.parseDouble(tokens.nextToken());
            while (tokens.hasMoreTokens()) {
                double multiple = Double.parseDouble(tokens.nextToken());
                term[1 + index.get(tokens.nextToken())] = multiple;
            }
        }
        return terms;
    }
}
