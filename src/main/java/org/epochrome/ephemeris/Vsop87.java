package org.epochrome.ephemeris;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.StringTokenizer;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * Where a planet stands around the Sun: VSOP87, version B (Bretagnon &amp; Francou 1988, Astron. Astrophys. 202, 309),
 * truncated. The series are resources, each read once, when first asked for; their README tells the truncation and the
 * correction of Uranus and Neptune to DE405. As seen from the Earth within 0.7 arcsec of DE405 from 1960 to 2060; up to
 * 1.6 arcsec (Uranus) off a fit to DE404 in 2060 to 2100. A planet with moons is the barycentre of its system, at most 0.1
 * arcsec from the planet.
 */
final class Vsop87 {
    private static final double DAYS_PER_MILLENNIUM = 365250.0;
    private static final Map<String, Vsop87> LOADED = new ConcurrentHashMap<>();

    // Dynamical ecliptic and equinox J2000 of VSOP87 to the equator J2000 of FK5 (vsop87.txt of CDS catalogue VI/81),
    // which here stands for ICRS: the two differ by 0.03 arcsec (Feissel & Mignard 1998, Astron. Astrophys. 331, L33).
    private static final Vector3D ICRS_X = new Vector3D(1.0, 0.000000440360, -0.000000190919);
    private static final Vector3D ICRS_Y = new Vector3D(-0.000000479966, 0.917482137087, -0.397776982902);
    private static final Vector3D ICRS_Z = new Vector3D(0.0, 0.397776982902, 0.917482137087);

    /** The dynamical ecliptic and equinox of J2000. */
    static final Axes ECLIPTIC = new Axes(
            new Vector3D(ICRS_X.getX(), ICRS_Y.getX(), ICRS_Z.getX()),
            new Vector3D(ICRS_X.getY(), ICRS_Y.getY(), ICRS_Z.getY()),
            new Vector3D(ICRS_X.getZ(), ICRS_Y.getZ(), ICRS_Z.getZ()));

    /** Per power of T the terms A cos(B + C T), as A, B, C, A, B, C, ... */
    private final double[][] longitude;

    private final double[][] latitude;
    private final double[][] radius;

    private Vsop87(double[][] longitude, double[][] latitude, double[][] radius) {
        this.longitude = longitude;
        this.latitude = latitude;
        this.radius = radius;
    }

    static Vsop87 of(Body body) {
        return named(body.name());
    }

    static Vsop87 earth() {
        return named("EARTH");
    }

    /** Heliocentric position in ICRS, au, at a TDB instant. */
    Vector3D heliocentricAu(double daysSinceJ2000) {
        double t = daysSinceJ2000 / DAYS_PER_MILLENNIUM;
        double l = sum(longitude, t);
        double b = sum(latitude, t);
        Vector3D ecliptic = new Vector3D(l, b).scalarMultiply(sum(radius, t));
        return new Vector3D(ICRS_X.dotProduct(ecliptic), ICRS_Y.dotProduct(ecliptic), ICRS_Z.dotProduct(ecliptic));
    }

    private static double sum(double[][] powers, double t) {
        double sum = 0;
        for (int power = powers.length - 1; power >= 0; power--) {
            double[] terms = powers[power];
            double part = 0;
            for (int i = 0; i < terms.length; i += 3) {
                part += terms[i] * Math.cos(terms[i + 1] + terms[i + 2] * t);
            }
            sum = sum * t + part;
        }
        return sum;
    }

    private static Vsop87 named(String planet) {
        return LOADED.computeIfAbsent(planet, Vsop87::read);
    }

    private static Vsop87 read(String planet) {
        String resource = "vsop87b-" + planet.toLowerCase(Locale.ROOT) + ".txt";
        double[][][] series = new double[3][6][0];
        try (InputStream stream = Vsop87.class.getResourceAsStream(resource);
                var reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.US_ASCII))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (!line.startsWith("#")) {
                    var section = new StringTokenizer(line);
                    int coordinate = "LBR".indexOf(section.nextToken());
                    int power = Integer.parseInt(section.nextToken());
                    series[coordinate][power] = terms(reader, Integer.parseInt(section.nextToken()));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Vsop87(series[0], series[1], series[2]);
    }

    private static double[] terms(BufferedReader reader, int count) throws IOException {
        double[] terms = new double[3 * count];
        for (int i = 0; i < terms.length; i += 3) {
            var numbers = new StringTokenizer(reader.readLine());
            for (int k = 0; k < 3; k++) {
                terms[i + k] = Double.parseDouble(numbers.nextToken());
            }
        }
        return terms;
    }
}
