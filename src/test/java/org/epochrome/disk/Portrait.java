package org.epochrome.disk;

import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.world.AlbedoMap;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Band;
import org.epochrome.time.RecordingSpan;

/**
 * A planet in a posture of the test's own, taken by the demo's ray caster, which shares no geometry with the fit. It
 * stands still.
 *
 * @param body the planet
 * @param tiltDeg planetocentric sub-Earth latitude
 * @param sunEastDeg longitude of the Sun east of the middle meridian
 * @param sunLatitudeDeg planetocentric latitude of the Sun
 * @param radiusPx equatorial
 * @param northDeg north angle
 * @param mirrored whether the image is mirrored
 * @param offsetX of the planet from the middle of the frame, pixels
 * @param offsetY the same
 * @param minnaert exponent
 * @param fwhmPx of the blur
 */
public record Portrait(
        Body body,
        double tiltDeg,
        double sunEastDeg,
        double sunLatitudeDeg,
        double radiusPx,
        double northDeg,
        boolean mirrored,
        double offsetX,
        double offsetY,
        double minnaert,
        double fwhmPx) {
    public static final double GAIN = 0.8;
    public static final double SKY = 0.012;

    private static final Instant INSTANT = Instant.parse("2031-05-02T21:00:00Z");
    private static final double MERIDIAN = 137;
    private static final double DIAMETER_ARCSEC = 20;

    /** At opposition over the equator's middle meridian, unmirrored, a little off the frame's middle. */
    public static Portrait full(Body body, double tiltDeg, double radiusPx, double northDeg) {
        return new Portrait(body, tiltDeg, 0, tiltDeg, radiusPx, northDeg, false, 2.3, -1.6, 0.9, radiusPx / 20);
    }

    public Portrait sunAt(double eastDeg, double latitudeDeg) {
        return new Portrait(
                body, tiltDeg, eastDeg, latitudeDeg, radiusPx, northDeg, mirrored, offsetX, offsetY, minnaert, fwhmPx);
    }

    public Portrait mirrorImage() {
        return new Portrait(
                body,
                tiltDeg,
                sunEastDeg,
                sunLatitudeDeg,
                radiusPx,
                northDeg,
                !mirrored,
                offsetX,
                offsetY,
                minnaert,
                fwhmPx);
    }

    Portrait offset(double x, double y) {
        return new Portrait(
                body, tiltDeg, sunEastDeg, sunLatitudeDeg, radiusPx, northDeg, mirrored, x, y, minnaert, fwhmPx);
    }

    public Portrait shaded(double exponent, double blurFwhmPx) {
        return new Portrait(
                body,
                tiltDeg,
                sunEastDeg,
                sunLatitudeDeg,
                radiusPx,
                northDeg,
                mirrored,
                offsetX,
                offsetY,
                exponent,
                blurFwhmPx);
    }

    Aspect aspect() {
        int eastward = body.prograde() ? -1 : 1;
        Map<RotationSystem, Double> meridians = new EnumMap<>(RotationSystem.class);
        body.systems().forEach(system -> meridians.put(system, MERIDIAN));
        return new Aspect(
                body,
                INSTANT,
                Optional.empty(),
                meridians,
                graphic(tiltDeg),
                tiltDeg,
                graphic(sunLatitudeDeg),
                sunLatitudeDeg,
                MERIDIAN + eastward * sunEastDeg,
                0,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                DIAMETER_ARCSEC,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Optional.empty());
    }

    private double graphic(double centricDeg) {
        double squared = body.axisRatio() * body.axisRatio();
        return Math.toDegrees(Math.atan(Math.tan(Math.toRadians(centricDeg)) / squared));
    }

    public Globe globe() {
        return Globe.of(aspect());
    }

    /** A uniform planet. */
    public Rendered even(Noise noise) {
        return taken(Surface.grey(AlbedoMap.uniform(1)), noise);
    }

    /** The planet with a surface, in green. */
    public Rendered taken(Surface surface, Noise noise) {
        Function<Instant, Aspect> sky = instant -> aspect();
        int side = 2 * (int) Math.ceil(1.25 * radiusPx + 12);
        Scene scene = new Scene(surface, sky, Map.of("G", new BandSetting(minnaert, fwhmPx, GAIN)), SKY);
        Camera camera = Camera.withNorthAngle(
                        side, side, 0.5 * DIAMETER_ARCSEC / radiusPx, northDeg, mirrored, aspect())
                .offsetBy(offsetX, offsetY);
        RecordingSpan span = new RecordingSpan(INSTANT, INSTANT.plusSeconds(1));
        return scene.photograph(new Shot(Band.G, span, camera, 1, List.of(), noise));
    }
}
