package org.epochrome.ephemeris;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.analysis.interpolation.AkimaSplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * How much faster than its rotation system a latitude of a giant planet turns: its east-west winds at the cloud tops.
 *
 * <p>Jupiter: the profile that Tollefson et al. 2017 (Icarus 296, 163) measured by correlation of maps from the Hubble Space
 * Telescope in 2017 (filter F631N), to 4 to 9 m/s. Saturn: that of Garcia-Melendo et al. 2011 (Icarus 215, 62, table 1),
 * cloud tracking in near infrared images of the Cassini orbiter from 2004 to 2008, to 2 to 10 m/s, within 4 degrees of the
 * equator to 15. Both tables read off at every jet's peak and about every degree between, rounded to two or three digits;
 * beyond them, at the poles, the wind fades. Winds change over the years by some 10 m/s (Saturn's equatorial jet, seen at
 * different heights, by 100), and spots need not drift with the wind at their latitude. Between the nodes a smooth Akima
 * spline (1970) without overshoot.
 *
 * <p>Over a turn of 10 minutes, 10 m/s are 0.005 degrees on Jupiter: the profile matters over hours, not minutes.
 */
public final class ZonalWind {
    private static final double DAY_S = 86400.0;

    /** Poleward of this the circles get so small that no rate makes sense; the rate of this latitude is used. */
    private static final double LAST_LATITUDE_DEG = 85;

    private static final ZonalWind JUPITER = read(Body.JUPITER);
    private static final ZonalWind SATURN = read(Body.SATURN);

    private final Body body;
    private final PolynomialSplineFunction windMs;

    private ZonalWind(Body body, PolynomialSplineFunction windMs) {
        this.body = body;
        this.windMs = windMs;
    }

    private static ZonalWind read(Body body) {
        String resource = "wind-" + body.name().toLowerCase(Locale.ROOT) + ".txt";
        try (InputStream stream = ZonalWind.class.getResourceAsStream(resource);
                var reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.US_ASCII))) {
            double[][] nodes = reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> Arrays.stream(line.split(" "))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toArray(double[][]::new);
            return new ZonalWind(
                    body,
                    new AkimaSplineInterpolator()
                            .interpolate(
                                    Arrays.stream(nodes).mapToDouble(n -> n[0]).toArray(),
                                    Arrays.stream(nodes).mapToDouble(n -> n[1]).toArray()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The profile of a body; only Jupiter and Saturn have one. */
    public static Optional<ZonalWind> of(Body body) {
        return switch (body) {
            case JUPITER -> Optional.of(JUPITER);
            case SATURN -> Optional.of(SATURN);
            default -> Optional.empty();
        };
    }

    /** What to cite for the profile. */
    public String source() {
        return body == Body.JUPITER
                ? "Tollefson et al. 2017, Icarus 296, 163"
                : "Garcia-Melendo et al. 2011, Icarus 215, 62";
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
