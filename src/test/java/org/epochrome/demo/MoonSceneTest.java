package org.epochrome.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.RingSystem;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.SceneMoon;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.world.AlbedoMap;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Moons of the demo's scenes against closed forms: the area and the place of a disk on the sky, and where a shadow falls on the
 * middle of the disk. The globe is even and flat (Minnaert's k = 1/2: 1 everywhere at opposition), 100 pixels in radius.
 */
class MoonSceneTest {
    private static final double RADIUS_PX = 100;
    private static final double SIZE = 0.08;
    private static final double SHINE = 0.4;
    private static final double SUN_RADIUS = 0.0046505 / HandMade.SUN_AU;
    private static final AlbedoMap EVEN = AlbedoMap.uniform(1);

    private static HandMade opposition() {
        return HandMade.facing(Body.JUPITER, 40, 0).acrossArcsec(20);
    }

    private static Plane picture(HandMade hand, Camera camera, Function<Instant, SceneMoon.Place> course) {
        SceneMoon moon = new SceneMoon(SIZE, Map.of("G", SHINE), course);
        return hand.scene(EVEN, 0.5, 0)
                .with(List.of(moon))
                .truth(Band.G, camera, HandMade.EPOCH)
                .pixels();
    }

    private static Plane still(HandMade hand, Camera camera, double abeam, double up, double front) {
        return picture(hand, camera, at -> new SceneMoon.Place(abeam, up, front));
    }

    /** What a moon adds to the picture. */
    private static Plane more(HandMade hand, Camera camera, double abeam, double up, double front) {
        return Moments.difference(still(hand, camera, abeam, up, front), hand.picture(EVEN, 0.5, 0, camera));
    }

    /** The pole at 30 degrees, to the left of up; mirrored, what lies abeam lies to the left of it. */
    @ParameterizedTest
    @CsvSource({"false, 1.3, 0.2", "true, 1.3, 0.2", "false, -1.1, -0.9"})
    void besideTheDiskItIsAnEvenDiskOfItsBrightness(boolean mirrored, double abeam, double up) {
        HandMade hand = opposition();
        Camera camera = hand.camera(361, 361, 30, mirrored);
        Moments moon = Moments.of(more(hand, camera, abeam, up, 5));
        double c = Math.cos(Math.toRadians(30));
        double s = Math.sin(Math.toRadians(30));
        double right = mirrored ? -abeam : abeam;
        // nine samples a pixel: a thousandth of the area of a disk of 8 pixels
        assertEquals(Math.PI * 64 * SHINE, moon.sum(), 0.005 * moon.sum());
        assertEquals(180 + RADIUS_PX * (right * c - up * s), moon.x(), 0.03);
        assertEquals(180 - RADIUS_PX * (up * c + right * s), moon.y(), 0.03);
        assertEquals(16, moon.xx(), 0.2);
        assertEquals(16, moon.yy(), 0.2);
    }

    @Test
    void inFrontItHidesTheGlobeAndBehindItIsHidden() {
        HandMade hand = opposition();
        Camera camera = hand.camera(241, 241, 0, false);
        Plane before = still(hand, camera, 0.3, 0, 5);
        assertEquals(SHINE, before.at(150, 120), 1e-4);
        assertEquals(SHINE, before.at(156, 120), 1e-4);
        assertEquals(1, before.at(160, 120), 1e-5);
        assertEquals(0, Moments.of(more(hand, camera, 0.3, 0, -5)).sum(), 1e-9);
    }

    /** The Sun 10 degrees off: a moon above the middle of the disk, towards the Sun, has its shadow there. */
    @ParameterizedTest
    @CsvSource({"5", "25"})
    void itsShadowIsDarkAndHasAPenumbra(double away) {
        double phase = Math.toRadians(10);
        HandMade hand = opposition().sunAt(50, 0);
        Camera camera = hand.camera(241, 241, 0, false);
        // central meridians grow with time and markings go to the right: the Sun stands on the left
        double front = 1 + away * Math.cos(phase);
        // what is nearer than the planet is seen further aside
        double seen = -away * Math.sin(phase) / (1 - front * Math.sin(Math.toRadians(10 / 3600.0)));
        Plane shade = Moments.difference(hand.picture(EVEN, 0.5, 0, camera), still(hand, camera, seen, 0, front));
        double full = hand.picture(EVEN, 0.5, 0, camera).at(120, 120);
        Plane near = window(shade, 120, 120, 25);
        Moments lost = Moments.of(near);
        assertEquals(120, lost.x(), 0.1);
        assertEquals(120, lost.y(), 1e-6);
        // a shaft of the moon's size, cut aslant by the ground; the penumbra changes nothing of it
        assertEquals(Math.PI * 64 * full / Math.cos(phase), lost.sum(), 5e-4 * lost.sum());
        assertEquals(full, shade.at(120, 120), 1e-6);
        double half = RADIUS_PX * away * SUN_RADIUS;
        // across the Sun's direction; with 25 radii the edge is 4.7 pixels wide
        assertEquals(full, shade.at(120, (int) Math.floor(120 - 8 + half) + 2), 1e-6);
        assertEquals(0, shade.at(120, (int) Math.ceil(120 - 8 - half) - 2), 1e-6);
        double edge = 0;
        for (int y = 105; y <= 120; y++) {
            edge += shade.at(120, y) / full;
        }
        // the middle pixel counts half; by the Sun's roundness the moon's edge shades a little less than half
        assertEquals(8.5, edge, 0.15);
    }

    private static Plane window(Plane from, int x, int y, int reach) {
        Plane part = new Plane(from.width(), from.height());
        for (int row = y - reach; row <= y + reach; row++) {
            for (int column = x - reach; column <= x + reach; column++) {
                part.set(column, row, from.at(column, row));
            }
        }
        return part;
    }

    @Test
    void ringsCrossItAndTakeItsShadow() {
        HandMade hand = HandMade.facing(Body.SATURN, 40, 20).acrossArcsec(20);
        Camera camera = hand.camera(441, 241, 0, false);
        double depth = 0.3;
        RingSystem rings = new RingSystem(List.of(new RingSystem.Zone(80_000, 140_000, depth, Map.of("G", 0.5))));
        double through = Math.exp(-depth / Math.sin(Math.toRadians(20)));
        Scene bare = hand.scene(EVEN, 0.5, 0).with(rings);
        SceneMoon behind = new SceneMoon(SIZE, Map.of("G", SHINE), at -> new SceneMoon.Place(1.8, 0, -3));
        double ring = bare.truth(Band.G, camera, HandMade.EPOCH).pixels().at(400, 120);
        double crossed = bare.with(List.of(behind))
                .truth(Band.G, camera, HandMade.EPOCH)
                .pixels()
                .at(400, 120);
        assertEquals(ring + SHINE * through, crossed, 1e-6);
        // the Sun 10 degrees to the left: 2 radii from the ring towards it, a moon has its shadow there
        HandMade evening = hand.sunAt(50, 20);
        Scene shaded = evening.scene(EVEN, 0.5, 0).with(rings);
        SceneMoon before = new SceneMoon(SIZE, Map.of("G", SHINE), at -> {
            double sunAbeam = Math.cos(Math.toRadians(20)) * Math.sin(Math.toRadians(10));
            double sunUp =
                    Math.sin(Math.toRadians(20)) * Math.cos(Math.toRadians(20)) * (1 - Math.cos(Math.toRadians(10)));
            return new SceneMoon.Place(
                    1.8 - 2 * sunAbeam, 2 * sunUp, 2 * Math.sqrt(1 - sunAbeam * sunAbeam - sunUp * sunUp));
        });
        assertEquals(
                0,
                shaded.with(List.of(before))
                        .truth(Band.G, camera, HandMade.EPOCH)
                        .pixels()
                        .at(400, 120),
                1e-6);
    }

    @Test
    void itMovesDuringARecording() {
        HandMade hand = opposition();
        Camera camera = hand.camera(361, 361, 0, false);
        SceneMoon moon = new SceneMoon(
                SIZE,
                Map.of("G", SHINE),
                at -> new SceneMoon.Place(
                        1.3 + 0.002 * Duration.between(HandMade.EPOCH, at).toSeconds(), 0, 5));
        Scene scene = hand.scene(EVEN, 0.5, 0).with(List.of(moon));
        Shot shot = Shot.ideal(Band.G, HandMade.around(HandMade.EPOCH, Duration.ofSeconds(100)), camera);
        Moments drawn =
                Moments.of(Moments.difference(scene.photograph(shot).pixels(), hand.picture(EVEN, 0.5, 0, camera)));
        assertEquals(180 + 130, drawn.x(), 0.0005);
        // five places, 4 pixels apart
        assertEquals(16 + 16 * 2, drawn.xx(), 0.3);
        assertEquals(16, drawn.yy(), 0.2);
    }

    @Test
    void aBandWithoutItIsRefused() {
        SceneMoon moon = new SceneMoon(SIZE, Map.of("R", 1.0), at -> new SceneMoon.Place(0, 0, 2));
        HandMade hand = opposition();
        Scene scene = hand.scene(EVEN, 0.5, 0).with(List.of(moon));
        assertThrows(
                IllegalArgumentException.class,
                () -> scene.truth(Band.G, hand.camera(100, 100, 0, false), HandMade.EPOCH));
    }
}
