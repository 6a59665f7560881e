package org.epochrome.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.RingSystem;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.world.AlbedoMap;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;

/**
 * Rings and globe in front of each other and in each other's shadow, against closed forms in the plane of the central
 * meridian and in the plane of the rings. The globe is even and flat (Minnaert's k = 1/2, brightness 1 everywhere at
 * opposition), 100 pixels in radius, the observer 20 degrees north of the rings.
 */
class RingSceneTest {
    private static final double OPENING = 20;
    private static final double SIN = Math.sin(Math.toRadians(OPENING));
    private static final double RADIUS_PX = 100;
    private static final double KM = 60_268;
    private static final double INNER = 1.3;
    private static final double OUTER = 2.0;
    private static final double SHINE = 0.6;
    private static final int WIDTH = 451;
    private static final int HEIGHT = 251;

    private static Plane picture(HandMade hand, double depth) {
        RingSystem rings =
                new RingSystem(List.of(new RingSystem.Zone(INNER * KM, OUTER * KM, depth, Map.of("G", SHINE))));
        Scene scene = new Scene(
                        Surface.grey(AlbedoMap.uniform(1)), hand.sky(), Map.of("G", new BandSetting(0.5, 0, 1)), 0)
                .with(rings);
        return scene.truth(
                        Band.G,
                        Camera.withNorthAngle(WIDTH, HEIGHT, 0.2, 0, false, hand.at(HandMade.EPOCH)),
                        HandMade.EPOCH)
                .pixels();
    }

    private static HandMade opposition() {
        return HandMade.facing(Body.SATURN, 200, OPENING);
    }

    /** Brightness at a place, radii to the right of and above the centre. */
    private static double at(Plane picture, double right, double up) {
        return picture.at((int) Math.round((WIDTH - 1) / 2 + right * RADIUS_PX), (int)
                Math.round((HEIGHT - 1) / 2 - up * RADIUS_PX));
    }

    /** Where the ray through a place of the central meridian meets the globe: distance from the axis, and height. */
    private static double[] onGlobe(double up) {
        double f = Body.SATURN.axisRatio();
        double cos = Math.cos(Math.toRadians(OPENING));
        // x = up (-sin B) + t cos B, z = up cos B + t sin B, on x^2 + z^2 / f^2 = 1; the nearer of two solutions
        double a = cos * cos + SIN * SIN / (f * f);
        double b = up * cos * SIN * (1 / (f * f) - 1);
        double c = up * up * (SIN * SIN + cos * cos / (f * f)) - 1;
        double t = (-b + Math.sqrt(b * b - a * c)) / a;
        return new double[] {-up * SIN + t * cos, up * cos + t * SIN};
    }

    @Test
    void aDeepRingShowsItsEllipse() {
        Plane p = picture(opposition(), 100);
        for (double rho : new double[] {INNER + 0.03, 1.6, OUTER - 0.03}) {
            assertEquals(SHINE, at(p, rho, 0), 1e-6);
            assertEquals(SHINE, at(p, -rho, 0), 1e-6);
        }
        assertEquals(0, at(p, INNER - 0.03, 0), 1e-9);
        assertEquals(0, at(p, OUTER + 0.03, 0), 1e-9);
        double angle = Math.toRadians(60); // of a point of the ring's outer edge, on the sky
        assertEquals(SHINE, at(p, 1.97 * Math.cos(angle), -1.97 * Math.sin(angle) * SIN), 1.5e-4);
        assertEquals(0, at(p, 2.03 * Math.cos(angle), -2.03 * Math.sin(angle) * SIN), 1e-9);
    }

    @Test
    void theNearSideHidesTheGlobeAndTheGlobeTheFarSide() {
        Plane p = picture(opposition(), 100);
        assertEquals(SHINE, at(p, 0, -1.6 * SIN), 1e-4);
        assertEquals(1, at(p, 0, 1.6 * SIN), 6e-5);
        assertEquals(1, at(p, 0, -1.2 * SIN), 3e-5);
    }

    /** At opposition the shadow hides behind the ring that casts it: the globe's light passes twice. */
    @Test
    void aThinRingDimsTheGlobeTwice() {
        double depth = 0.2;
        double once = Math.exp(-depth / SIN);
        assertEquals(once * once + SHINE * (1 - once * once), at(picture(opposition(), depth), 0, -1.6 * SIN), 4e-5);
    }

    @Test
    void theRingsShadowFallsWhereTheSunSendsIt() {
        double sun = 8;
        double depth = 0.15;
        Plane p = picture(opposition().sunAt(200, sun), depth);
        Plane bare = picture(opposition().sunAt(200, sun), 0);
        double shade = Math.exp(-depth / Math.sin(Math.toRadians(sun)));
        int shaded = 0;
        int free = 0;
        for (double up = -0.8; up < 0.8; up += 0.01) {
            boolean behindRing = up < 0 && -up / SIN > INNER - 0.05 && -up / SIN < OUTER + 0.05;
            double[] point = onGlobe(up);
            double crossing = point[0] - point[1] / Math.tan(Math.toRadians(sun));
            boolean nearEdge = Math.abs(crossing - INNER) < 0.06 || Math.abs(crossing - OUTER) < 0.06;
            if (behindRing || nearEdge) {
                continue;
            }
            boolean dark = point[1] < 0 && crossing > INNER && crossing < OUTER;
            assertEquals(dark ? shade : 1, at(p, 0, up) / at(bare, 0, up), 1e-6, "at " + up);
            shaded += dark ? 1 : 0;
            free += dark ? 0 : 1;
        }
        assertTrue(shaded >= 3 && free >= 30, shaded + " and " + free);
    }

    /** The shadow of the globe lies across the far side, away from the Sun; the Sun stands west of the observer. */
    @Test
    void theGlobesShadowFallsOnTheRing() {
        double off = 10; // central meridians grow westward: the Sun stands over a meridian that will come later
        Plane p = picture(opposition().sunAt(200 + off, 1), 100);
        double lit = at(p, 1.6, 0);
        assertTrue(lit > 0.05, "lit " + lit);
        int dark = 0;
        for (double rho = INNER + 0.03; rho < OUTER; rho += 0.1) {
            for (int away = -60; away <= 60; away += 5) { // from the direction away from the observer, eastward
                double angle = Math.toRadians(away);
                double right = -rho * Math.sin(angle);
                double up = rho * Math.cos(angle) * SIN;
                double fromAxis = rho * Math.abs(Math.sin(Math.toRadians(away + off)));
                boolean hidden = Math.hypot(right, up / 0.9) < 1.1;
                if (hidden || Math.abs(fromAxis - 1) < 0.08) {
                    continue;
                }
                boolean shadow = fromAxis < 1;
                assertEquals(shadow ? 0 : lit, at(p, right, up), 2e-5, rho + " at " + away);
                dark += shadow ? 1 : 0;
            }
        }
        assertTrue(dark >= 3, dark + " points in shadow");
    }

    @Test
    void theDarkFaceShowsWhatGetsThrough() {
        double depth = 0.3;
        Plane p = picture(opposition().sunAt(200, -OPENING), depth);
        assertEquals(2 * SHINE * depth / SIN * Math.exp(-depth / SIN), at(p, 1.6, 0), 1e-6);
    }

    @Test
    void aBandWithoutRingsIsRefused() {
        RingSystem rings = new RingSystem(List.of(new RingSystem.Zone(80_000, 90_000, 1, Map.of("R", 1.0))));
        HandMade hand = opposition();
        Scene scene = new Scene(
                        Surface.grey(AlbedoMap.uniform(1)), hand.sky(), Map.of("G", new BandSetting(0.5, 0, 1)), 0)
                .with(rings);
        assertThrows(
                IllegalArgumentException.class,
                () -> scene.truth(Band.G, hand.camera(100, 100, 0, false), HandMade.EPOCH));
    }
}
