package org.epochrome.ephemeris;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.interpolation.AkimaSplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.epochrome.ephemeris.body.WindTable;

/**
 * How much faster than its rotation system a latitude of a giant planet turns: its east-west winds at the cloud tops.
 *
 * <p>The tables are resources that the facts of a body name, with their sources. They are read off published ones at every
 * jet's peak and about every degree between, rounded to two or three digits; beyond those, at the poles, the wind fades.
 * Winds change over the years by some 10 m/s (Saturn's equatorial jet, seen at different heights, by 100), and spots need
 * not drift with the wind at their latitude. Between the nodes a smooth Akima spline (1970) without overshoot.
 *
 * <p>Over a turn of 10 minutes, 10 m/s are 0.005 degrees on Jupiter: the profile matters over hours, not minutes.
 */
public final class ZonalWind {
    private static final double DAY_S = 86400.0;

    /** Poleward of this the circles get so small that no rate makes sense; the rate of this latitude is used. */
    private static final double LAST_LATITUDE_DEG = 85;

    private static final Map<Body, Optional<ZonalWind>> KNOWN = new ConcurrentHashMap<>();

    private final Body body;
    private final String source;
    private final PolynomialSplineFunction windMs;

    private ZonalWind(Body body, WindTable table) {
        this.body = body;
        this.source = table.source();
        this.windMs = read(table.resource());
    }

    private static PolynomialSplineFunction read(String resource) {
        try (InputStream stream = ZonalWind.class.getResourceAsStream(resource);
                var reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.US_ASCII))) {
            double[][] nodes = reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> Arrays.stream(line.split(" "))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toArray(double[][]::new);
            return new AkimaSplineInterpolator()
                    .interpolate(
                            Arrays.stream(nodes).mapToDouble(n -> n[0]).toArray(),
                            Arrays.stream(nodes).mapToDouble(n -> n[1]).toArray());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The profile of a body, if its facts name a table. */
    static Optional<ZonalWind> of(Body body) {
        return KNOWN.computeIfAbsent(body, b -> b.facts().wind().map(table -> new ZonalWind(b, table)));
    }

    /** What to cite for the profile. */
    public String source() {
        return source;
    }

    /** Eastward wind in m/s against the body's default system at a planetographic latitude, -90 to 90 degrees. */
    public double windMs(double latitudeDeg) {
        return windMs.value(latitudeDeg);
    }

    /**
     * Degrees of longitude a day by which a latitude (planetographic, -90 to 90 degrees) runs ahead of a rotation system, in the sense
     * of rotation.
     *
     * @param system one of the body's
     */
    public DoubleUnaryOperator extraTurnDegPerDay(RotationSystem system) {
        RotationElements elements = RotationElements.of(body);
        double ahead = elements.turnRateDegPerDay(body.defaultSystem()) - elements.turnRateDegPerDay(system);
        return latitudeDeg -> {
            double latitude = Math.max(-LAST_LATITUDE_DEG, Math.min(LAST_LATITUDE_DEG, latitudeDeg));
            return ahead + Math.toDegrees(windMs(latitude) * DAY_S / axisDistanceM(latitude));
        };
    }

    /** Distance from the rotation axis at a planetographic latitude, metres. */
    private double axisDistanceM(double latitudeDeg) {
        double latitude = Math.toRadians(latitudeDeg);
        double cos = Math.cos(latitude);
        double axial = body.axisRatio() * Math.sin(latitude);
        return 1000 * body.equatorialRadiusKm() * cos / Math.sqrt(cos * cos + axial * axial);
    }
}
