package org.epochrome.ephemeris;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.StringTokenizer;
import org.apache.commons.math3.analysis.polynomials.PolynomialFunction;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * The Earth's Moon as seen from the Earth's centre, light time included: the series of Meeus 1998, Astronomical Algorithms,
 * 2nd ed., chapter 47, after ELP-2000/82 (Chapront-Touz&eacute; &amp; Chapront 1983, Astron. Astrophys. 124, 50). The book claims 10
 * arcsec in longitude and 4 in latitude; docs/validation.md compares it with DE405. The terms are a resource.
 */
final class LunarSeries {
    private static final double DAYS_PER_CENTURY = 36525.0;
    private static final double MEAN_DISTANCE_KM = 385000.56;
    private static final double MICRODEGREE = Math.toRadians(1e-6);

    // Meeus 1998, (47.1) to (47.6), degrees by powers of Julian centuries of TT since J2000.0
    private static final PolynomialFunction MEAN_LONGITUDE =
            degrees(218.3164477, 481267.88123421, -0.0015786, 1.0 / 538841, -1.0 / 65194000);
    private static final PolynomialFunction[] ARGUMENTS = {
        degrees(297.8501921, 445267.1114034, -0.0018819, 1.0 / 545868, -1.0 / 113065000),
        degrees(357.5291092, 35999.0502909, -0.0001536, 1.0 / 24490000),
        degrees(134.9633964, 477198.8675055, 0.0087414, 1.0 / 69699, -1.0 / 14712000),
        degrees(93.2720950, 483202.0175233, -0.0036539, -1.0 / 3526000, 1.0 / 863310000)
    };
    private static final PolynomialFunction ECCENTRICITY =
            new PolynomialFunction(new double[] {1, -0.002516, -0.0000074});
    private static final PolynomialFunction VENUS = degrees(119.75, 131.849);
    private static final PolynomialFunction JUPITER = degrees(53.09, 479264.290);
    private static final PolynomialFunction FLATTENING = degrees(313.45, 481266.484);

    private static final int SOLAR_ANOMALY = 1;
    private static final int LUNAR_ANOMALY = 2;
    private static final int NODE_DISTANCE = 3;

    private static final LunarSeries LOADED = read();

    /** Each term: multiples of the arguments, then its amplitudes. */
    private final List<double[]> longitude = new ArrayList<>();

    private final List<double[]> latitude = new ArrayList<>();

    static LunarSeries get() {
        return LOADED;
    }

    /** From the Earth's centre on the mean ecliptic and equinox of date, km, at a TT instant. */
    Vector3D positionKm(double ttDays) {
        double t = ttDays / DAYS_PER_CENTURY;
        double[] arguments = new double[ARGUMENTS.length];
        for (int i = 0; i < arguments.length; i++) {
            arguments[i] = ARGUMENTS[i].value(t);
        }
        double mean = MEAN_LONGITUDE.value(t);
        double anomaly = arguments[LUNAR_ANOMALY];
        double node = arguments[NODE_DISTANCE];
        double venus = VENUS.value(t);

        double lon = 3958 * Math.sin(venus) + 1962 * Math.sin(mean - node) + 318 * Math.sin(JUPITER.value(t));
        double distanceM = 0;
        double lat = -2235 * Math.sin(mean)
                + 382 * Math.sin(FLATTENING.value(t))
                + 175 * Math.sin(venus - node)
                + 175 * Math.sin(venus + node)
                + 127 * Math.sin(mean - anomaly)
                - 115 * Math.sin(mean + anomaly);
        double eccentricity = ECCENTRICITY.value(t);
        for (double[] term : longitude) {
            double angle = angle(term, arguments);
            double factor = Math.pow(eccentricity, Math.abs(term[SOLAR_ANOMALY]));
            lon += factor * term[4] * Math.sin(angle);
            distanceM += factor * term[5] * Math.cos(angle);
        }
        for (double[] term : latitude) {
            double factor = Math.pow(eccentricity, Math.abs(term[SOLAR_ANOMALY]));
            lat += factor * term[4] * Math.sin(angle(term, arguments));
        }
        return new Vector3D(mean + lon * MICRODEGREE, lat * MICRODEGREE)
                .scalarMultiply(MEAN_DISTANCE_KM + distanceM / 1000);
    }

    private static double angle(double[] term, double[] arguments) {
        double angle = 0;
        for (int i = 0; i < arguments.length; i++) {
            angle += term[i] * arguments[i];
        }
        return angle;
    }

    private static PolynomialFunction degrees(double... coefficients) {
        double[] radians = new double[coefficients.length];
        for (int i = 0; i < radians.length; i++) {
            radians[i] = Math.toRadians(coefficients[i]);
        }
        return new PolynomialFunction(radians);
    }

    private static LunarSeries read() {
        var series = new LunarSeries();
        try (InputStream stream = LunarSeries.class.getResourceAsStream("moon.txt");
                var reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.US_ASCII))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (!line.startsWith("#")) {
                    var section = new StringTokenizer(line);
                    List<double[]> terms = section.nextToken().equals("longitude") ? series.longitude : series.latitude;
                    int count = Integer.parseInt(section.nextToken());
                    for (int i = 0; i < count; i++) {
                        terms.add(numbers(reader.readLine()));
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return series;
    }

    private static double[] numbers(String line) {
        var tokens = new StringTokenizer(line);
        double[] numbers = new double[tokens.countTokens()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = Double.parseDouble(tokens.nextToken());
        }
        return numbers;
    }
}
