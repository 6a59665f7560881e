package org.epochrome.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.world.AlbedoMap;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.time.RecordingSpan;

/** Aspects written down by hand, and short cuts for scenes made with them. */
record HandMade(
        Body body,
        double centralMeridianDeg,
        double subEarthCentricDeg,
        double subSolarLongitudeDeg,
        double subSolarCentricDeg,
        double poleAngleDeg,
        double diameterArcsec,
        double turnDegPerDay,
        double parallacticDeg) {
    static final Instant EPOCH = Instant.parse("2031-05-02T21:00:00Z");
    static final double SUN_AU = 5;

    /** Opposition: the Sun behind the observer, 40 arcsec across, not turning. */
    static HandMade facing(Body body, double centralMeridianDeg, double subEarthCentricDeg) {
        return new HandMade(
                body, centralMeridianDeg, subEarthCentricDeg, centralMeridianDeg, subEarthCentricDeg, 0, 40, 0, 0);
    }

    HandMade sunAt(double longitudeDeg, double centricDeg) {
        return new HandMade(
                body,
                centralMeridianDeg,
                subEarthCentricDeg,
                longitudeDeg,
                centricDeg,
                poleAngleDeg,
                diameterArcsec,
                turnDegPerDay,
                parallacticDeg);
    }

    HandMade turning(double degPerDay) {
        return new HandMade(
                body,
                centralMeridianDeg,
                subEarthCentricDeg,
                subSolarLongitudeDeg,
                subSolarCentricDeg,
                poleAngleDeg,
                diameterArcsec,
                degPerDay,
                parallacticDeg);
    }

    HandMade pole(double positionAngleDeg, double zenithPositionAngleDeg) {
        return new HandMade(
                body,
                centralMeridianDeg,
                subEarthCentricDeg,
                subSolarLongitudeDeg,
                subSolarCentricDeg,
                positionAngleDeg,
                diameterArcsec,
                turnDegPerDay,
                zenithPositionAngleDeg);
    }

    HandMade acrossArcsec(double diameter) {
        return new HandMade(
                body,
                centralMeridianDeg,
                subEarthCentricDeg,
                subSolarLongitudeDeg,
                subSolarCentricDeg,
                poleAngleDeg,
                diameter,
                turnDegPerDay,
                parallacticDeg);
    }

    Aspect at(Instant instant) {
        double turned = turnDegPerDay * Duration.between(EPOCH, instant).toMillis() / 86_400_000.0;
        Map<RotationSystem, Double> meridians = new EnumMap<>(RotationSystem.class);
        for (RotationSystem system : body.systems()) {
            meridians.put(system, circle(centralMeridianDeg + turned));
        }
        double f = body.axisRatio();
        return new Aspect(
                body,
                instant,
                Optional.empty(),
                meridians,
                graphic(subEarthCentricDeg, f),
                subEarthCentricDeg,
                graphic(subSolarCentricDeg, f),
                subSolarCentricDeg,
                circle(subSolarLongitudeDeg + turned),
                poleAngleDeg,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                SUN_AU,
                Double.NaN,
                diameterArcsec,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Optional.of(new Aspect.Horizontal(40, 150, parallacticDeg)));
    }

    private static double graphic(double centricDeg, double axisRatio) {
        return Math.toDegrees(Math.atan(Math.tan(Math.toRadians(centricDeg)) / (axisRatio * axisRatio)));
    }

    private static double circle(double degrees) {
        return degrees - 360 * Math.floor(degrees / 360);
    }

    Function<Instant, Aspect> sky() {
        return this::at;
    }

    /** The scene in G alone, gain 1, black sky. */
    Scene scene(AlbedoMap map, double minnaertK, double blurFwhmPx) {
        return new Scene(Surface.grey(map), sky(), Map.of("G", new BandSetting(minnaertK, blurFwhmPx, 1)), 0);
    }

    /** A camera of a tenth of an arcsec per pixel. */
    Camera camera(int width, int height, double northAngleDeg, boolean mirrored) {
        return Camera.withNorthAngle(width, height, 0.1, northAngleDeg, mirrored, at(EPOCH));
    }

    Plane picture(AlbedoMap map, double minnaertK, double blurFwhmPx, Camera camera) {
        return scene(map, minnaertK, blurFwhmPx).truth(Band.G, camera, EPOCH).pixels();
    }

    static RecordingSpan around(Instant middle, Duration length) {
        return new RecordingSpan(middle.minus(length.dividedBy(2)), middle.plus(length.dividedBy(2)));
    }
}
