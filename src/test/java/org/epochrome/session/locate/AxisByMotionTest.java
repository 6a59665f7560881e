package org.epochrome.session.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.epochrome.demo.DemoSession;
import org.epochrome.demo.Surfaces;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.Shot;
import org.epochrome.disk.Disk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.io.identify.NameClock;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.read.FrameSource;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Light;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.SessionRefused;
import org.epochrome.time.LeapSeconds;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** North of an invented Mars over 40 minutes, against the pose that its ray-caster gave it. */
@Tag("session")
class AxisByMotionTest {
    private static final Site SITE = new Site(40.4, -3.5, 700);

    @TempDir
    Path folder;

    /** The lit side tells roughly, the motion exactly, and both together that the frames are mirrored. Measured: 0.06 deg. */
    @Test
    void gibbousAndMirrored() {
        Combination c = combined(Instant.parse("2020-11-10T22:00:00Z"), -57, true, 40);
        assertTrue(c.disk().mirrored(), "taken as not mirrored");
        assertNorth(-57, c);
    }

    /** Nearly full, so that all directions must be tried. Measured: 0.03 deg. */
    @Test
    void full() {
        Combination c = combined(Instant.parse("2022-12-08T00:00:00Z"), 140, false, 40);
        assertNorth(140, c);
    }

    /** Within three minutes nothing moves far enough. */
    @Test
    void tooShort() {
        SessionRefused refused = assertThrows(
                SessionRefused.class, () -> combined(Instant.parse("2022-12-08T00:00:00Z"), 140, false, 3));
        assertTrue(refused.getMessage().contains("--north"), refused.getMessage());
    }

    private static void assertNorth(double truth, Combination c) {
        double off = Disk.wrapDeg(c.disk().northAngleDeg() - truth);
        assertEquals(0, off, 0.5);
        double sigma = c.frames().get(0).limb().northSigmaDeg();
        assertTrue(sigma > 0 && sigma < 0.5 && Math.abs(off) < 3 * sigma, off + " deg off, said to be " + sigma);
    }

    private Combination combined(Instant begin, double northDeg, boolean mirrored, int minutes) {
        Body body = Body.MARS;
        Function<Instant, Aspect> sky = at -> Ephemeris.aspect(body, at, Optional.of(SITE));
        Map<String, BandSetting> bands = Map.of(
                "R", new BandSetting(0.70, 3.5, 1.0),
                "G", new BandSetting(0.75, 3.4, 1.6),
                "B", new BandSetting(0.86, 3.6, 3.0));
        Scene scene = new Scene(Surfaces.mars(), sky, bands, 0.01);
        Instant epoch = begin.plusSeconds(30L * minutes);
        Camera camera = Camera.withNorthAngle(190, 190, 0.115, northDeg, mirrored, sky.apply(epoch));
        Map<String, Shot> shots = new LinkedHashMap<>();
        List<Band> order = List.of(Band.R, Band.G, Band.B);
        int step = 60 * minutes / 6;
        for (int i = 0; i < 6; i++) {
            Instant start = begin.plusSeconds((long) step * i);
            Band band = order.get(i % 3);
            shots.put(
                    "m" + i + "-" + band.name() + ".fits",
                    new Shot(
                            band,
                            new RecordingSpan(start, start.plusSeconds(step - 5)),
                            camera.offsetBy(1.7 * i - 4, 3 - i),
                            1,
                            List.of(),
                            new Noise(150, 0.15, 31 + i)));
        }
        new DemoSession(body, SITE, epoch, scene, shots, Map.of()).write(folder, true);
        FrameSource source = new FrameSource(NameClock.UNKNOWN, Map.of(), LeapSeconds::taiMinusUtcS);
        List<DatedFrame> frames = new ArrayList<>();
        shots.keySet().forEach(name -> frames.add(source.find(FrameRequest.of(folder.resolve(name)))));
        return new Combiner(Recipe.usual(frames, body)
                        .at(Optional.of(epoch))
                        .with(Corrections.usual(body)
                                .by(Optional.of(body.defaultSystem()))
                                .with(Corrections::dispersion, false)
                                .with(Corrections::light, Light.EVEN)))
                .combine(Progress.NONE);
    }
}
