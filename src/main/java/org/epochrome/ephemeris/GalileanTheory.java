package org.epochrome.ephemeris;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.StringTokenizer;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * Where the moons of Jupiter stand around it: the series L1.2 (Lainey, Duriez &amp; Vienne 2006, Astron. Astrophys. 456, 783),
 * their larger terms. Against JPL's ephemeris JUP365 within 400 km from 1930 to 2070; docs/validation.md has the comparison. The
 * terms are a resource, read when first asked for.
 */
final class GalileanTheory {
    /** From 1950 January 1, 0 h TT, to J2000.0. */
    private static final double DAYS_TO_J2000 = 18262.5;

    /** Jupiter's equator, to which the elements refer: longitude of its node and inclination on the equator of J2000. */
    private static final Axes EQUATOR =
            Axes.ICRS.turnedAboutZ(6.249501830657150).turnedAboutX(0.4450947364976650);

    /**
     * What Callisto's longitude has too much: 312 km, the mean difference to JUP365 in eight places from 1931 to 2041. Predictions for
     * 2016 by the IMCCE ask for it as well.
     */
    private static final double CALLISTO_AHEAD_RAD = 1.66e-4;

    private static final int KEPLER_ROUNDS = 4;

    private static final GalileanTheory LOADED = read();

    private enum Element {
        AXIS,
        LONGITUDE,
        ECCENTRICITY,
        INCLINATION
    }

    /** Per moon and element the terms: amplitude, phase, frequency. */
    private final Map<GalileanMoon, Map<Element, double[][]>> terms = new EnumMap<>(GalileanMoon.class);

    static GalileanTheory get() {
        return LOADED;
    }

    /** From Jupiter's centre to a moon in ICRS, km, at a TDB instant. */
    Vector3D positionKm(GalileanMoon moon, double daysSinceJ2000) {
        Map<Element, double[][]> own = terms.get(moon);
        double days = daysSinceJ2000 + DAYS_TO_J2000;
        double axisKm = sum(own.get(Element.AXIS), days)[0] * Ephemeris.AU_KM;
        double longitude = meanLongitude(own.get(Element.LONGITUDE), days);
        if (moon == GalileanMoon.CALLISTO) {
            longitude -= CALLISTO_AHEAD_RAD;
        }
        // e cos, e sin of the pericentre's longitude; sin(i/2) cos, sin(i/2) sin of the node's
        double[] eccentricity = sum(own.get(Element.ECCENTRICITY), days);
        double[] inclination = sum(own.get(Element.INCLINATION), days);
        return EQUATOR.toIcrs(onEquator(axisKm, longitude, eccentricity[0], eccentricity[1], inclination));
    }

    /** Position by elements that are regular for small eccentricities and inclinations (Broucke &amp; Cefola 1972). */
    private static Vector3D onEquator(double axis, double longitude, double k, double h, double[] inclination) {
        double eccentric = longitude;
        for (int i = 0; i < KEPLER_ROUNDS; i++) {
            double cos = Math.cos(eccentric);
            double sin = Math.sin(eccentric);
            eccentric += (longitude - eccentric + k * sin - h * cos) / (1 - k * cos - h * sin);
        }
        double cos = Math.cos(eccentric);
        double sin = Math.sin(eccentric);
        double part = (h * cos - k * sin) / (1 + Math.sqrt(1 - k * k - h * h));
        double x = axis * (cos - k - h * part);
        double y = axis * (sin - h + k * part);
        double q = inclination[0];
        double p = inclination[1];
        double up = 2 * Math.sqrt(1 - q * q - p * p);
        return new Vector3D(
                x * (1 - 2 * p * p) + y * 2 * p * q, x * 2 * p * q + y * (1 - 2 * q * q), (q * y - p * x) * up);
    }

    private static double meanLongitude(double[][] terms, double days) {
        double longitude = terms[0][0] + terms[0][1] * days;
        for (int i = 1; i < terms.length; i++) {
            longitude += terms[i][0] * Math.sin(terms[i][1] + terms[i][2] * days);
        }
        return longitude % (2 * Math.PI);
    }

    private static double[] sum(double[][] terms, double days) {
        double[] sum = new double[2];
        for (double[] term : terms) {
            double angle = term[1] + term[2] * days;
            sum[0] += term[0] * Math.cos(angle);
            sum[1] += term[0] * Math.sin(angle);
        }
        return sum;
    }

    private static GalileanTheory read() {
        var theory = new GalileanTheory();
        try (InputStream stream = GalileanTheory.class.getResourceAsStream("galilean-moons.txt");
                var reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.US_ASCII))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (!line.startsWith("#")) {
                    var section = new StringTokenizer(line);
                    Element element = Element.valueOf(section.nextToken().toUpperCase(Locale.ROOT));
                    GalileanMoon moon = numbered(Integer.parseInt(section.nextToken()));
                    theory.terms
                            .computeIfAbsent(moon, m -> new EnumMap<>(Element.class))
                            .put(element, terms(reader, Integer.parseInt(section.nextToken())));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return theory;
    }

    private static GalileanMoon numbered(int number) {
        return Arrays.stream(GalileanMoon.values())
                .filter(moon -> moon.number() == number)
                .findFirst()
                .orElseThrow();
    }

    private static double[][] terms(BufferedReader reader, int count) throws IOException {
        double[][] terms = new double[count][3];
        for (double[] term : terms) {
            var numbers = new StringTokenizer(reader.readLine());
            for (int k = 0; k < term.length; k++) {
                term[k] = Double.parseDouble(numbers.nextToken());
            }
        }
        return terms;
    }
}
