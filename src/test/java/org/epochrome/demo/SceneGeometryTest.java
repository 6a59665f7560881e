package org.epochrome.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.world.AlbedoMap;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pictures against closed forms of the orthographic view of a spheroid, worked out here without rays. */
class SceneGeometryTest {
    /** Minnaert's law with k = 1/2 shows a uniform disk at opposition. */
    private static final double FLAT = 0.5;

    /**
     * The second moments of a uniform ellipse with semi-axes a, b are a^2/4 and b^2/4. The rim, where mu is held at
     * 0.03, lacks a third of its light on 0.0009 of the area: 0.03 % of the axes; stepping at the limb adds less.
     */
    @ParameterizedTest
    @CsvSource({
        "JUPITER, 3.1, 0",
        "JUPITER, -2.0, 33",
        "SATURN, 26.5, 0",
        "SATURN, -20, -70",
        "MARS, 24, 145",
        "URANUS, 60, 10"
    })
    void theLimbIsTheProjectedSpheroid(Body body, double latitudeCentric, double northAngle) {
        HandMade hand = HandMade.facing(body, 200, latitudeCentric);
        Plane picture = hand.picture(AlbedoMap.uniform(1), FLAT, 0, hand.camera(440, 440, northAngle, false));
        Moments m = Moments.of(picture);

        double a = 200;
        double sin = Math.sin(Math.toRadians(latitudeCentric));
        double b = a * Math.sqrt(sin * sin + Math.pow(body.axisRatio(), 2) * (1 - sin * sin));
        double trace = m.xx() + m.yy();
        double split = Math.sqrt(Math.pow(m.xx() - m.yy(), 2) + 4 * m.xy() * m.xy());
        assertEquals(a, 2 * Math.sqrt((trace + split) / 2), 0.0005 * a);
        assertEquals(b, 2 * Math.sqrt((trace - split) / 2), 0.0005 * b);
        assertEquals(Math.PI * a * b, m.sum(), 0.0008 * m.sum());
        assertEquals(219.5, m.x(), 0.003);
        assertEquals(219.5, m.y(), 0.003);
        if (split > 0.01 * trace) { // the short axis points north
            double major = 0.5 * Math.toDegrees(Math.atan2(2 * m.xy(), m.xx() - m.yy()));
            assertEquals(0, Math.IEEEremainder(-major - northAngle, 180), 0.05);
        }
    }

    /**
     * A spot lands where the orthographic projection of its latitude and longitude falls: C cos(lat) sin(dL) across,
     * C (f^2 sin(lat) cos(D) - cos(lat) cos(dL) sin(D)) along the pole, C = 1 / sqrt(cos^2 + f^2 sin^2). The finite
     * distance moves it by up to 200 px * 20 arcsec = 0.02 px, its own size and foreshortening by half as much.
     */
    @ParameterizedTest
    @CsvSource({
        "JUPITER, 120, 120, 0, 0, 0, false",
        "JUPITER, 120, 100, -22, 3, 0, false",
        "JUPITER, 350, 20, 35, -3, 25, false",
        "JUPITER, 120, 150, 15, 2, -40, true",
        "MARS, 10, 330, 40, 22, 160, false",
        "MARS, 10, 330, 40, 22, 160, true",
        "SATURN, 77, 100, -30, -26, 8, true",
        "VENUS, 200, 230, 20, 5, 0, false",
        "URANUS, 200, 180, 50, 30, -15, false",
    })
    void aSpotLandsWhereTheProjectionSays(
            Body body,
            double meridian,
            double longitude,
            double latitude,
            double subEarth,
            double northAngle,
            boolean mirrored) {
        HandMade hand = HandMade.facing(body, meridian, subEarth);
        double east = body.prograde() ? -longitude : longitude;
        Camera camera = hand.camera(440, 440, northAngle, mirrored).offsetBy(3.3, -7.7);
        Plane with = hand.picture(spot(latitude, east), FLAT, 2, camera);
        Plane without = hand.picture(AlbedoMap.uniform(0.5), FLAT, 2, camera);
        Moments seen = Moments.of(Moments.difference(with, without));

        double f = body.axisRatio();
        double phi = Math.toRadians(latitude);
        double d = Math.toRadians(subEarth);
        double dl = Math.toRadians((body.prograde() ? -1 : 1) * (longitude - meridian));
        double c = 200 / Math.sqrt(Math.pow(Math.cos(phi), 2) + Math.pow(f * Math.sin(phi), 2));
        double across = c * Math.cos(phi) * Math.sin(dl); // to the right of a pole that points up
        double along = c * (f * f * Math.sin(phi) * Math.cos(d) - Math.cos(phi) * Math.cos(dl) * Math.sin(d));
        double n = Math.toRadians(northAngle);
        double abeam = mirrored ? -across : across;
        double x = 222.8 + abeam * Math.cos(n) - along * Math.sin(n);
        double y = 211.8 - abeam * Math.sin(n) - along * Math.cos(n);
        assertEquals(x, seen.x(), 0.05);
        assertEquals(y, seen.y(), 0.05);
    }

    /** A Gaussian spot with a sigma of half a degree, on a ground of 0.5. */
    private static AlbedoMap spot(double latitudeDeg, double eastDeg) {
        return AlbedoMap.of(1440, 720, (latitude, east) -> {
            double north = latitude - latitudeDeg;
            double aside = Math.IEEEremainder(east - eastDeg, 360) * Math.cos(Math.toRadians(latitude));
            return 0.5 + 0.5 * Math.exp(-2 * (north * north + aside * aside));
        });
    }

    /** With north up and east left, a planet that turns eastward carries its spots to the right, Venus to the left. */
    @ParameterizedTest
    @CsvSource({"JUPITER, 870.5, false, 1", "JUPITER, 870.5, true, -1", "MARS, 350.9, false, 1", "VENUS, 350, false, -1"
    })
    void spotsMoveWithTheRotation(Body body, double rate, boolean mirrored, int sense) {
        HandMade hand = HandMade.facing(body, 90, 0).turning(rate);
        Scene scene = hand.scene(spot(0, body.prograde() ? -90 : 90), FLAT, 2);
        Scene plain = hand.scene(AlbedoMap.uniform(0.5), FLAT, 2);
        Camera camera = hand.camera(440, 440, 0, mirrored);
        Instant later = HandMade.EPOCH.plusSeconds(240);
        Moments moved = Moments.of(Moments.difference(
                scene.truth(Band.G, camera, later).pixels(),
                plain.truth(Band.G, camera, later).pixels()));
        double turned = Math.toRadians(rate * 240 / 86400);
        assertEquals(219.5 + sense * 200 * Math.sin(turned), moved.x(), 0.0015);
    }

    @Test
    void theBrightnessAtTheMiddleIsMinnaerts() {
        HandMade hand = HandMade.facing(Body.MARS, 0, 0).sunAt(30, 0);
        Plane picture = hand.picture(AlbedoMap.uniform(0.8), 0.7, 0, hand.camera(441, 441, 0, false));
        assertEquals(0.8 * Math.pow(Math.cos(Math.toRadians(30)), 0.7), picture.at(220, 220), 1e-5);
    }

    /** The Sun at a smaller west longitude lights the right side (north up), and the terminator is at -R cos(phase). */
    @ParameterizedTest
    @CsvSource({"60, false, 1", "60, true, -1", "-40, false, -1"})
    void thePhaseIsOnTheSideAwayFromTheSun(double sunEast, boolean mirrored, int side) {
        HandMade hand = HandMade.facing(Body.MARS, 100, 0).sunAt(100 - sunEast, 0);
        Plane picture = hand.picture(AlbedoMap.uniform(1), 1, 0, hand.camera(441, 441, 0, mirrored));
        double terminator = -200 * Math.cos(Math.toRadians(sunEast)) * side;
        int lit = (int) Math.round(220 + terminator + 3 * side);
        int dark = (int) Math.round(220 + terminator - 3 * side);
        assertTrue(picture.at(lit, 220) > 0.01, "lit beside the terminator");
        assertEquals(0, picture.at(dark, 220), "dark beyond it");
    }

    /** The real sky: the bright side of a crescent Venus points to the Sun's position angle. */
    @ParameterizedTest
    @CsvSource({
        "VENUS, 2022-02-01T06:00:00Z, false",
        "VENUS, 2023-07-25T18:00:00Z, true",
        "MARS, 2022-10-26T02:07:00Z, false",
        "MERCURY, 2024-03-28T18:00:00Z, false",
    })
    void theBrightLimbPointsToTheSun(Body body, Instant instant, boolean mirrored) {
        Aspect aspect = Ephemeris.aspect(body, instant, Optional.of(new Site(46.2, 8.5, 480)));
        double scale = aspect.equatorialDiameterArcsec() / 200;
        Camera camera = Camera.withNorthAngle(240, 240, scale, 20, mirrored, aspect);
        Scene scene =
                new Scene(Surface.grey(AlbedoMap.uniform(1)), any -> aspect, Map.of("G", new BandSetting(1, 0, 1)), 0);
        Rendered rendered = scene.truth(Band.G, camera, instant);
        Moments m = Moments.of(rendered.pixels());
        double angle = Math.toDegrees(Math.atan2(
                -(m.x() - rendered.disk().x()), -(m.y() - rendered.disk().y())));
        double wanted = camera.displayedAngleDeg(aspect.sunPositionAngleDeg());
        // the flattening of Mars bends it a little; the other two are round
        assertEquals(0, Math.IEEEremainder(angle - wanted, 360), body == Body.MARS ? 0.15 : 0.05);
        assertEquals(20, rendered.disk().northAngleDeg(), 1e-9);
        assertEquals(100, rendered.disk().equatorialRadiusPx(), 1e-9);
    }
}
