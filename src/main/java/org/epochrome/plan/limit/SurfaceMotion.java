package org.epochrome.plan.limit;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.RotationElements;
import org.epochrome.ephemeris.RotationSystem;

/**
 * How fast the surface of a planet moves across the middle of its disk. On the meridian that faces the observer it moves at right
 * angles to the line of sight, whatever the tilt of the axis, so that nothing is foreshortened there; the rate is the growth
 * of the central meridian, which contains the motion of the observer.
 */
public final class SurfaceMotion {
    /** Half the time over which the central meridian is differenced; exact to the nutation of the orbit in it. */
    private static final Duration STEP = Duration.ofMinutes(10);

    private static final double STEP_LATITUDE_DEG = 0.5;
    private static final double DAY_MIN = 1440;

    private final Aspect aspect;
    private final DoubleUnaryOperator degPerDay;

    private SurfaceMotion(Aspect aspect, DoubleUnaryOperator degPerDay) {
        this.aspect = aspect;
        this.degPerDay = degPerDay;
    }

    /**
     * The motion at an instant: with the winds of the planet where they are known, with its clouds in the band that shows them.
     *
     * @param band name of the band, such as UV
     */
    public static SurfaceMotion of(Body body, Instant utc, String band) {
        RotationSystem system = body.defaultSystem();
        double turned = meridian(body, utc.plus(STEP), system) - meridian(body, utc.minus(STEP), system);
        double days = 2.0 * STEP.toSeconds() / Duration.ofDays(1).toSeconds();
        double rate = Math.IEEEremainder(turned, 360) / days;
        DoubleUnaryOperator winds = body.wind()
                .map(w -> w.extraTurnDegPerDay(system))
                .orElse(body.clouds()
                        .filter(c -> c.band().equals(band))
                        .<DoubleUnaryOperator>map(c -> {
                            double ahead = 360 / c.periodDays(body.equatorialRadiusKm())
                                    - RotationElements.of(body).turnRateDegPerDay(system);
                            return latitude -> ahead;
                        })
                        .orElse(latitude -> 0));
        return new SurfaceMotion(
                Ephemeris.aspect(body, utc, Optional.empty()), latitude -> rate + winds.applyAsDouble(latitude));
    }

    private static double meridian(Body body, Instant utc, RotationSystem system) {
        return Ephemeris.aspect(body, utc, Optional.empty()).centralMeridianDeg(system);
    }

    /** Turn of a planetographic latitude against the line of sight, degrees an hour. */
    public double degPerHour(double latitudeDeg) {
        return degPerDay.applyAsDouble(latitudeDeg) / 24;
    }

    /** Speed of a planetographic latitude on the central meridian, arcsec a minute; 0 at the poles. */
    public double arcsecPerMin(double latitudeDeg) {
        double latitude = Math.toRadians(latitudeDeg);
        double cos = Math.cos(latitude);
        double axial = aspect.body().axisRatio() * Math.sin(latitude);
        double fromAxis = cos / Math.sqrt(cos * cos + axial * axial);
        double radPerMin = Math.toRadians(degPerDay.applyAsDouble(latitudeDeg)) / DAY_MIN;
        return Math.abs(radPerMin) * fromAxis * aspect.equatorialDiameterArcsec() / 2;
    }

    /** Planetographic latitude of the disk's centre, degrees. */
    public double centreLatitudeDeg() {
        return aspect.subEarthLatitudeDeg();
    }

    /** Speed at the disk's centre, arcsec a minute. */
    public double centreArcsecPerMin() {
        return arcsecPerMin(centreLatitudeDeg());
    }

    /** Speed of the fastest latitude that is seen, arcsec a minute; near the equator unless a pole faces the observer. */
    public double fastestArcsecPerMin() {
        double fastest = 0;
        double from = Math.max(-90, centreLatitudeDeg() - 90);
        double to = Math.min(90, centreLatitudeDeg() + 90);
        for (double latitude = from; latitude <= to; latitude += STEP_LATITUDE_DEG) {
            fastest = Math.max(fastest, arcsecPerMin(latitude));
        }
        return fastest;
    }
}
