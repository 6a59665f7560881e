package org.epochrome.plan.night;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * Finds risings, settings, culminations and twilights. Refraction at the horizon is 34 arcmin, the Sun's radius 16, as the almanacs
 * have it.
 */
final class Risings {
    /** Airless altitude of the Sun's centre when its upper limb appears at the horizon. */
    static final double SUNSET_DEG = -50 / 60.0;

    private static final double REFRACTION_DEG = 34 / 60.0;
    private static final double CIVIL_DEG = -6;
    private static final double NAUTICAL_DEG = -12;
    private static final double ASTRONOMICAL_DEG = -18;

    private static final Duration STEP = Duration.ofMinutes(10);
    private static final Duration HALF_A_DAY = Duration.ofHours(12);
    /** The mean rates of hour angles are wrong by 0.6 degrees an hour at most, so each round gains a factor of 20 or more. */
    private static final int ROUNDS = 8;

    private static final double DEG_PER_SECOND = 15.0 / 3600;

    private final NightSky sky;
    private final Instant midnight;

    Risings(NightSky sky, Instant midnight) {
        this.sky = sky;
        this.midnight = midnight;
    }

    RiseAndSet planet() {
        return pass(NightSky.Target.PLANET, utc -> -REFRACTION_DEG);
    }

    /** The Moon rises and sets by its upper limb. */
    RiseAndSet moon() {
        return pass(NightSky.Target.MOON, utc -> -REFRACTION_DEG - sky.moonRadiusDeg(utc));
    }

    private RiseAndSet pass(NightSky.Target object, ToDoubleFunction<Instant> horizonDeg) {
        Instant culmination = hourAngleNearest(object, 0, midnight);
        Interval eastern = new Interval(hourAngleNearest(object, 180, culmination.minus(HALF_A_DAY)), culmination);
        Interval western = new Interval(culmination, hourAngleNearest(object, 180, culmination.plus(HALF_A_DAY)));
        ToDoubleFunction<Instant> height =
                utc -> sky.horizontal(object, utc).altitudeDeg() - horizonDeg.applyAsDouble(utc);
        return new RiseAndSet(
                Crossings.last(Crossings.of(height, eastern, STEP), true),
                culmination,
                sky.horizontal(object, culmination).altitudeDeg(),
                Crossings.first(Crossings.of(height, western, STEP), false));
    }

    /** When a body has an hour angle, at the passage nearest to an instant. */
    private Instant hourAngleNearest(NightSky.Target object, double hourAngleDeg, Instant near) {
        Instant utc = near;
        for (int i = 0; i < ROUNDS; i++) {
            double missingDeg = Math.IEEEremainder(hourAngleDeg - sky.hourAngleDeg(object, utc), 360);
            utc = utc.plusMillis(Math.round(1000 * missingDeg / DEG_PER_SECOND));
        }
        return utc;
    }

    SunTimes sun() {
        Interval evening = new Interval(midnight.minus(HALF_A_DAY), midnight);
        Interval morning = new Interval(midnight, midnight.plus(HALF_A_DAY));
        return new SunTimes(
                dusk(evening, SUNSET_DEG),
                dusk(evening, CIVIL_DEG),
                dusk(evening, NAUTICAL_DEG),
                dusk(evening, ASTRONOMICAL_DEG),
                dawn(morning, ASTRONOMICAL_DEG),
                dawn(morning, NAUTICAL_DEG),
                dawn(morning, CIVIL_DEG),
                dawn(morning, SUNSET_DEG));
    }

    private Optional<Instant> dusk(Interval evening, double altitudeDeg) {
        return Crossings.last(sunPasses(evening, altitudeDeg), false);
    }

    private Optional<Instant> dawn(Interval morning, double altitudeDeg) {
        return Crossings.first(sunPasses(morning, altitudeDeg), true);
    }

    private List<Crossings.Crossing> sunPasses(Interval interval, double altitudeDeg) {
        return Crossings.of(
                utc -> sky.horizontal(NightSky.Target.SUN, utc).altitudeDeg() - altitudeDeg, interval, STEP);
    }
}
