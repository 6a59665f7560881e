package org.epochrome.session.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.session.recipe.Alignment;
import org.epochrome.session.recipe.Assignment;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.turn.Rotation;
import org.junit.jupiter.api.Test;

class RotationLawTest {
    private static final Instant EPOCH = Instant.parse("2023-03-20T18:00:00Z");

    private static Recipe recipe(Body body, Optional<RotationSystem> system, OptionalDouble period) {
        Corrections usual = Corrections.usual(body);
        return new Recipe(
                Frames.of(List.of()),
                body,
                Place.UNKNOWN,
                Optional.empty(),
                Setup.UNKNOWN,
                usual.with(Corrections::system, system).with(Corrections::rotationPeriodDays, period),
                Alignment.USUAL,
                new Assignment("R", "G", "B", Optional.empty()));
    }

    private static Recipe usual(Body body) {
        return recipe(body, Corrections.usual(body).system(), OptionalDouble.empty());
    }

    /** Degrees that a latitude turns in the sense of the body's rotation in a time up to the epoch. */
    private static DoubleUnaryOperator turned(RotationLaw law, Body body, double seconds) {
        Aspect epoch = Ephemeris.aspect(body, EPOCH, Optional.empty());
        Aspect before = Ephemeris.aspect(body, EPOCH.minusMillis(Math.round(1000 * seconds)), Optional.empty());
        Rotation rotation = law.between(before, epoch);
        return latitude -> (body.prograde() ? -1 : 1) * Math.toDegrees(rotation.backRad(Math.toRadians(latitude)));
    }

    /**
     * Features within 9 degrees of the equator turn with System I in the mean (877.9 degrees a day: its definition), those beyond with
     * System II or III, jets aside: what a simple two-zone planet does in 10 minutes, to 0.05 degrees.
     */
    @Test
    void jupiterTurnsByItsWinds() {
        RotationLaw law = RotationLaw.of(usual(Body.JUPITER), "G");
        assertEquals("the winds at each latitude", law.name());
        assertTrue(law.source().contains("Tollefson"));
        DoubleUnaryOperator turned = turned(law, Body.JUPITER, 600);
        double mean = 0;
        for (int i = 0; i < 18; i++) {
            mean += turned.applyAsDouble(-8.5 + i) / 18;
        }
        assertEquals(877.9 * 600 / 86400, mean, 0.05);
        for (double latitude : new double[] {-60, -45, -35, 35, 45, 60}) {
            assertEquals(870.27 * 600 / 86400, turned.applyAsDouble(latitude), 0.05);
        }
    }

    @Test
    void aSystemThatIsAskedForOverridesTheWinds() {
        RotationLaw law =
                RotationLaw.of(recipe(Body.SATURN, Optional.of(RotationSystem.III), OptionalDouble.empty()), "G");
        assertEquals("System III", law.name());
        // 810.7939024 degrees a day: IAU WGCCRE 2015; the Earth's motion turns the view by some 0.1 degrees a day more
        double turned = turned(law, Body.SATURN, 3600).applyAsDouble(40);
        assertEquals(810.794 / 24, turned, 0.01);
    }

    /** 105 m/s on a circle of 6118 km (Sanchez-Lavega et al. 2008): 85 degrees a day; the way of Venus past the Earth adds 1.2. */
    @Test
    void ultravioletVenusTurnsWithItsClouds() {
        double expected = Math.toDegrees(105 * 3600 / 6118e3);
        RotationLaw clouds = RotationLaw.of(usual(Body.VENUS), "UV");
        assertTrue(clouds.source().contains("35, L13204"));
        assertEquals(expected, turned(clouds, Body.VENUS, 3600).applyAsDouble(20), 0.06);
        // 1.48 degrees a day
        RotationLaw globe = RotationLaw.of(usual(Body.VENUS), "IR");
        assertEquals(1.4813688 / 24, turned(globe, Body.VENUS, 3600).applyAsDouble(20), 0.06);
    }

    @Test
    void aPeriodOverridesAll() {
        RotationLaw law =
                RotationLaw.of(recipe(Body.VENUS, Optional.of(RotationSystem.SINGLE), OptionalDouble.of(5)), "IR");
        assertEquals("a period of 5.0 days", law.name());
        assertEquals(3, turned(law, Body.VENUS, 3600).applyAsDouble(0), 0.06);
    }
}
