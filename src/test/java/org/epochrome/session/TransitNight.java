package org.epochrome.session;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.demo.DemoSession;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.SceneMoon;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.read.FrameSource;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Light;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.time.LeapSeconds;
import org.epochrome.time.RecordingSpan;

/** Frames of an invented Jupiter with moons, 95 pixels in radius, some minutes apart, and what comes out of them. */
final class TransitNight {
    /** Painted once; what the tests of moons state was measured on it. */
    static final Surface JUPITER = Surface.invented(Body.JUPITER, 31);

    static final double NORTH = 11;
    static final double GAIN = 0.8;
    /** Middles of the recordings, seconds from the epoch, and how far the disk drifted. */
    static final List<Taken> ONE_SET = List.of(
            new Taken(Band.R, -200, 2.2, -1.7), new Taken(Band.G, 5, 0.4, 1.1), new Taken(Band.B, 200, 1.3, 0.7));

    static final List<Taken> TWO_SETS = List.of(
            new Taken(Band.R, -400, 2.2, -1.7),
            new Taken(Band.G, -240, 0.4, 1.1),
            new Taken(Band.B, -80, 1.3, 0.7),
            new Taken(Band.R, 80, -2.1, 0.3),
            new Taken(Band.G, 240, 3.3, -2.4),
            new Taken(Band.B, 400, -0.6, -1.2));

    private static final Site SITE = new Site(46.2, 8.5, 480);
    private static final double SNR = 200;
    /** Instants that a recording is the mean of: moons move by some two pixels. */
    private static final int MOMENTS = 3;

    private static final int SIDE = 250;
    private static final double SCALE = 0.25;
    private static final Duration LENGTH = Duration.ofSeconds(80);

    private final Instant epoch;
    private final DemoSession session;
    private final List<DatedFrame> frames = new ArrayList<>();
    private final TrueDisk disk;

    /**
     * A frame.
     *
     * @param band the filter
     * @param middleS middle of its recording, seconds from the epoch
     * @param driftX how far right of the middle the disk lies
     * @param driftY the same below it
     */
    record Taken(Band band, int middleS, double driftX, double driftY) {}

    TransitNight(Path folder, Instant epoch, List<Taken> taken, List<SceneMoon> moons) {
        this.epoch = epoch;
        BandSetting setting = new BandSetting(0.93, 2.3, GAIN);
        Scene scene = new Scene(JUPITER, TransitNight::aspect, Map.of("R", setting, "G", setting, "B", setting), 0.01)
                .with(moons);
        Camera camera = Camera.withNorthAngle(SIDE, SIDE, SCALE, NORTH, false, aspect(epoch));
        Map<String, Shot> shots = new LinkedHashMap<>();
        for (Taken t : taken) {
            Instant start = epoch.plusSeconds(t.middleS).minus(LENGTH.dividedBy(2));
            shots.put(
                    t.band.name() + shots.size() + ".fits",
                    new Shot(
                            t.band,
                            new RecordingSpan(start, start.plus(LENGTH)),
                            camera.offsetBy(t.driftX, t.driftY),
                            MOMENTS,
                            List.of(),
                            new Noise(SNR, 0.1, 7 + shots.size())));
        }
        session = new DemoSession(Body.JUPITER, SITE, epoch, scene, shots, Map.of());
        disk = scene.disk(session.reference());
        Path own = folder.resolve("moons" + moons.size() + "-" + taken.size());
        session.write(own, true);
        FrameSource source = new FrameSource(NameClock.UNKNOWN, Map.of(), LeapSeconds::taiMinusUtcS);
        shots.keySet().forEach(name -> frames.add(source.find(FrameRequest.of(own.resolve(name)))));
    }

    static Aspect aspect(Instant at) {
        return Ephemeris.aspect(Body.JUPITER, at, Optional.of(SITE));
    }

    /** A recipe without dispersion, which the scene has none of. */
    Recipe recipe(boolean moons) {
        return Recipe.usual(frames, Body.JUPITER)
                .with(Place.at(SITE))
                .at(Optional.of(epoch))
                .with(new Setup(OptionalDouble.empty(), Mirroring.NO, OptionalDouble.empty(), Mount.EQUATORIAL))
                .with(Corrections.usual(Body.JUPITER)
                        .by(Optional.of(Body.JUPITER.defaultSystem()))
                        .with(Corrections::dispersion, false)
                        .with(Corrections::moons, moons)
                        .with(Corrections::light, Light.EVEN));
    }

    Combination combine(boolean moons) {
        return new Combiner(recipe(moons)).combine(Progress.NONE);
    }

    /** The picture that a perfect combination would give, R, G, B in the frames' units. */
    List<Plane> truth() {
        List<Plane> planes = new ArrayList<>();
        session.truth().forEach(t -> {
            Plane plane = t.pixels();
            for (int i = 0; i < plane.data().length; i++) {
                plane.data()[i] *= (float) GAIN;
            }
            planes.add(plane);
        });
        return planes;
    }

    /** Where the planet lies on the output. */
    TrueDisk disk() {
        return disk;
    }
}
