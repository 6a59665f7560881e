package org.epochrome.session.diagnose;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;
import org.epochrome.atmosphere.Air;
import org.epochrome.atmosphere.Dispersion;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.RingSystem;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.io.identify.BandChoice;
import org.epochrome.io.identify.Timing;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;

/**
 * Small frames of an invented planet under a true sky, rendered by the ray caster of the demo, whose user may then say
 * something wrong about them.
 */
record Evening(
        Body body,
        Site site,
        Instant epoch,
        long surface,
        int side,
        double scaleArcsec,
        double northDeg,
        boolean mirrored,
        Mount mount,
        List<Band> order,
        int stepS,
        double blurPx,
        double snr,
        long seed,
        OptionalDouble givenNorthDeg) {
    private static final Map<String, Surface> SURFACES = new ConcurrentHashMap<>();
    private static final int WAVELENGTHS = 5;
    private static final int LENGTH_S = 60;

    static final List<Band> RGB = List.of(Band.R, Band.G, Band.B);

    /** Three frames of Jupiter in five minutes. */
    static Evening jupiter() {
        return new Evening(
                Body.JUPITER,
                new Site(46.2, 8.5, 480),
                Instant.parse("2024-12-18T19:24:30Z"),
                156,
                130,
                0.46,
                11,
                false,
                Mount.EQUATORIAL,
                RGB,
                150,
                2.4,
                200,
                1,
                OptionalDouble.empty());
    }

    /** Six frames of a gibbous Mars in sixteen minutes. */
    static Evening mars() {
        return new Evening(
                Body.MARS,
                new Site(40.4, -3.5, 700),
                Instant.parse("2022-10-26T02:07:00Z"),
                314,
                130,
                0.16,
                -24,
                false,
                Mount.EQUATORIAL,
                List.of(Band.R, Band.G, Band.B, Band.R, Band.G, Band.B),
                190,
                2.4,
                200,
                5,
                OptionalDouble.of(-24));
    }

    /** Saturn with open rings. */
    static Evening saturn() {
        return new Evening(
                Body.SATURN,
                new Site(-37, 146.5, 300),
                Instant.parse("2021-08-28T12:31:00Z"),
                271,
                160,
                0.33,
                8,
                false,
                Mount.EQUATORIAL,
                List.of(Band.R, Band.G, Band.B, Band.R, Band.G, Band.B),
                150,
                2.4,
                200,
                9,
                OptionalDouble.empty());
    }

    Evening bands(List<Band> other) {
        return new Evening(
                body,
                site,
                epoch,
                surface,
                side,
                scaleArcsec,
                northDeg,
                mirrored,
                mount,
                other,
                stepS,
                blurPx,
                snr,
                seed,
                givenNorthDeg);
    }

    Evening every(int seconds) {
        return new Evening(
                body,
                site,
                epoch,
                surface,
                side,
                scaleArcsec,
                northDeg,
                mirrored,
                mount,
                order,
                seconds,
                blurPx,
                snr,
                seed,
                givenNorthDeg);
    }

    Evening at(String instant) {
        return new Evening(
                body,
                site,
                Instant.parse(instant),
                surface,
                side,
                scaleArcsec,
                northDeg,
                mirrored,
                mount,
                order,
                stepS,
                blurPx,
                snr,
                seed,
                givenNorthDeg);
    }

    Evening from(Site other) {
        return new Evening(
                body,
                other,
                epoch,
                surface,
                side,
                scaleArcsec,
                northDeg,
                mirrored,
                mount,
                order,
                stepS,
                blurPx,
                snr,
                seed,
                givenNorthDeg);
    }

    Evening of(long otherSurface, long otherSeed) {
        return new Evening(
                body,
                site,
                epoch,
                otherSurface,
                side,
                scaleArcsec,
                northDeg,
                mirrored,
                mount,
                order,
                stepS,
                blurPx,
                snr,
                otherSeed,
                givenNorthDeg);
    }

    Evening seen(double otherBlurPx, double otherSnr) {
        return new Evening(
                body,
                site,
                epoch,
                surface,
                side,
                scaleArcsec,
                northDeg,
                mirrored,
                mount,
                order,
                stepS,
                otherBlurPx,
                otherSnr,
                seed,
                givenNorthDeg);
    }

    Evening on(Mount other) {
        return new Evening(
                body,
                site,
                epoch,
                surface,
                side,
                scaleArcsec,
                northDeg,
                mirrored,
                other,
                order,
                stepS,
                blurPx,
                snr,
                seed,
                givenNorthDeg);
    }

    Evening lying(double north, boolean reflected) {
        return new Evening(
                body,
                site,
                epoch,
                surface,
                side,
                scaleArcsec,
                north,
                reflected,
                mount,
                order,
                stepS,
                blurPx,
                snr,
                seed,
                givenNorthDeg);
    }

    private Aspect aspect(Instant at) {
        return Ephemeris.aspect(body, at, Optional.of(site));
    }

    private Scene scene() {
        Surface painted = SURFACES.computeIfAbsent(body + " " + surface, k -> Surface.invented(body, surface));
        Map<String, BandSetting> bands = body == Body.MARS
                ? Map.of(
                        "R", new BandSetting(0.70, blurPx, 1.0),
                        "G", new BandSetting(0.75, blurPx, 1.9),
                        "B", new BandSetting(0.86, 1.1 * blurPx, 3.4))
                : Map.of(
                        "R", new BandSetting(0.97, blurPx, 0.86),
                        "G", new BandSetting(0.94, blurPx, 0.92),
                        "B", new BandSetting(0.88, 1.1 * blurPx, 1.05));
        Scene scene = new Scene(painted, this::aspect, bands, 0.012);
        return body == Body.SATURN ? scene.with(RingSystem.saturn()) : scene;
    }

    Instant mid(int index) {
        return epoch.plusMillis(Math.round(1000 * stepS * (index - 0.5 * (order.size() - 1))));
    }

    private Shot shot(int index) {
        Instant mid = mid(index);
        Aspect aspect = aspect(mid);
        double north = mount.carriedNorthDeg(northDeg, aspect(epoch), aspect, mirrored);
        Camera camera = Camera.withNorthAngle(side, side, scaleArcsec, north, mirrored, aspect)
                .offsetBy(1.7 * Math.sin(2 * index), 1.3 * Math.cos(3 * index));
        Band band = order.get(index);
        Dispersion dispersion = new Dispersion(
                Band.G.passband().effectiveNm(),
                aspect.horizontal().orElseThrow().altitudeDeg(),
                Air.standardAt(site.heightM()));
        List<Double> shifts = new ArrayList<>();
        for (int i = 0; i < WAVELENGTHS; i++) {
            double part = (i + 0.5) / WAVELENGTHS;
            shifts.add(dispersion.shiftArcsec(band.passband().fromNm()
                    + part * (band.passband().toNm() - band.passband().fromNm())));
        }
        RecordingSpan span = new RecordingSpan(mid.minusSeconds(LENGTH_S / 2), mid.plusSeconds(LENGTH_S / 2));
        return new Shot(band, span, camera, 1, shifts, new Noise(snr, 0.1, 100 * seed + index));
    }

    /** Photographs the frames into a folder. */
    List<DatedFrame> frames(Path folder) {
        return frames(folder, (i, p) -> p);
    }

    /** What somebody did to the pixels of a frame. */
    interface Processing {
        Plane on(int index, Plane counts);
    }

    List<DatedFrame> frames(Path folder, Processing processing) {
        List<DatedFrame> frames = new ArrayList<>();
        Scene scene = scene();
        for (int i = 0; i < order.size(); i++) {
            Shot shot = shot(i);
            Path file = folder.resolve((i + 1) + "-" + order.get(i).name() + ".tif");
            FrameWriter.write(file, processing.on(i, scene.photograph(shot).sixteenBit()), List.of(), true);
            frames.add(dated(file, shot.band(), shot.span()));
        }
        return frames;
    }

    static DatedFrame dated(Path file, Band band, RecordingSpan span) {
        return new DatedFrame(
                FrameRequest.of(file),
                FrameReader.head(file),
                new BandChoice(List.of(band), "test", true, List.of()),
                new Timing(span, Message.of("source.given", "test"), List.of()),
                Optional.empty());
    }

    /** A frame whose user says another time. */
    static DatedFrame later(DatedFrame frame, Duration by) {
        RecordingSpan span = frame.timing().span();
        return dated(
                frame.head().file(),
                frame.band().band().orElseThrow(),
                new RecordingSpan(span.start().plus(by), span.end().plus(by)));
    }

    /** Some of the frames at other times. */
    static List<DatedFrame> later(List<DatedFrame> frames, Duration by, Integer... which) {
        List<DatedFrame> result = new ArrayList<>(frames);
        for (int i : which) {
            result.set(i, later(frames.get(i), by));
        }
        return result;
    }

    /** What a user says about the frames who is right about everything else. */
    Recipe recipe(List<DatedFrame> frames) {
        return Recipe.usual(frames, body)
                .with(Place.at(site))
                .with(new Setup(givenNorthDeg, Mirroring.AUTO, OptionalDouble.empty(), mount))
                .with(Corrections.usual(body).by(Optional.of(body.defaultSystem())));
    }

    Recipe recipe(Path folder, UnaryOperator<List<DatedFrame>> told) {
        return recipe(told.apply(frames(folder)));
    }
}
