package org.epochrome.session.schedule;

import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationElements;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.ephemeris.ZonalWind;
import org.epochrome.ephemeris.body.CloudRotation;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.turn.Rotation;

/**
 * By which law the surface that a band shows turns.
 *
 * @param name for people, such as "System III"
 * @param source where its rates come from
 * @param system the longitude system that it is counted against
 * @param extraDegPerDay rate on top of that system's, in the sense of the body's rotation, by planetographic latitude in degrees;
 *     empty if there is none
 */
public record RotationLaw(
        String name, String source, RotationSystem system, Optional<DoubleUnaryOperator> extraDegPerDay) {

    /**
     * The law of a band in a recipe: the period or longitude system that the user chose, else the winds of the body, else its clouds
     * if the band shows them, else the rotation of the globe.
     */
    public static RotationLaw of(Recipe recipe, String band) {
        Body body = recipe.body();
        Corrections chosen = recipe.corrections();
        if (chosen.rotationPeriodDays().isPresent()) {
            double days = chosen.rotationPeriodDays().getAsDouble();
            return turning(body, days, String.format(Locale.ROOT, "a period of %s days", days), "given by the user");
        }
        if (chosen.system().isPresent()) {
            return rigid(body, chosen.system().get());
        }
        RotationSystem system = body.defaultSystem();
        Optional<ZonalWind> wind = body.wind();
        if (wind.isPresent()) {
            return new RotationLaw(
                    "the winds at each latitude",
                    wind.get().source(),
                    system,
                    Optional.of(wind.get().extraTurnDegPerDay(system)));
        }
        Optional<CloudRotation> clouds = body.clouds().filter(c -> c.band().equals(band));
        if (clouds.isPresent()) {
            double days = clouds.get().periodDays(body.equatorialRadiusKm());
            return turning(
                    body,
                    days,
                    String.format(Locale.ROOT, "the clouds, in %.2f days", days),
                    clouds.get().source());
        }
        return rigid(body, system);
    }

    private static RotationLaw rigid(Body body, RotationSystem system) {
        return new RotationLaw(
                system == RotationSystem.SINGLE ? "the planet's rotation" : "System " + system.key(),
                RotationElements.of(body).source(system),
                system,
                Optional.empty());
    }

    private static RotationLaw turning(Body body, double periodDays, String name, String source) {
        RotationSystem system = body.defaultSystem();
        double extra = 360 / periodDays - RotationElements.of(body).turnRateDegPerDay(system);
        return new RotationLaw(name, source, system, Optional.of(latitude -> extra));
    }

    /** By how many degrees a day the equator turns. */
    public double equatorDegPerDay(Body body) {
        return RotationElements.of(body).turnRateDegPerDay(system)
                + extraDegPerDay.map(extra -> extra.applyAsDouble(0)).orElse(0.0);
    }

    /** How far the surface turns between two aspects. */
    Rotation between(Aspect aspect, Aspect epoch) {
        return extraDegPerDay
                .map(extra -> Rotation.between(aspect, epoch, system, extra))
                .orElseGet(() -> Rotation.between(aspect, epoch, system));
    }
}
