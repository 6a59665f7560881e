package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.epochrome.demo.BandSetting;
import org.epochrome.demo.Camera;
import org.epochrome.demo.DemoSession;
import org.epochrome.demo.Noise;
import org.epochrome.demo.Rendered;
import org.epochrome.demo.Scene;
import org.epochrome.demo.SceneMoon;
import org.epochrome.demo.Shot;
import org.epochrome.demo.Surface;
import org.epochrome.demo.TrueDisk;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.io.DatedFrame;
import org.epochrome.io.FrameRequest;
import org.epochrome.io.FrameSource;
import org.epochrome.io.NameClock;
import org.epochrome.job.Progress;
import org.epochrome.time.LeapSeconds;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A transit of an invented moon and its shadow over an invented Jupiter, on a day on which no table has a moon there, against the
 * exact truth of the ray-caster.
 */
class MoonsTest {
    private static final Instant EPOCH = Instant.parse("2024-12-18T19:24:00Z");
    private static final Site SITE = new Site(46.2, 8.5, 480);
    /** As large and as fast as Io. */
    private static final double RADIUS = 0.0255;

    private static final double SPEED_PER_H = 0.86;
    private static final double FRONT = 5.8;

    @TempDir
    private Path folder;

    private static Aspect sky(Instant at) {
        return Ephemeris.aspect(Body.JUPITER, at, Optional.of(SITE));
    }

    private static SceneMoon.Place place(Instant at) {
        double hours = Duration.between(EPOCH, at).toMillis() / 3.6e6;
        return new SceneMoon.Place(-0.35 + SPEED_PER_H * hours, -0.12, FRONT);
    }

    private static DemoSession session(boolean moon) {
        Map<String, BandSetting> bands = Map.of(
                "R", new BandSetting(0.95, 3.0, 0.8),
                "G", new BandSetting(0.93, 3.0, 0.9),
                "B", new BandSetting(0.90, 3.2, 1.0));
        SceneMoon io = new SceneMoon(RADIUS, Map.of("R", 0.42, "G", 0.34, "B", 0.25), MoonsTest::place);
        Scene scene = new Scene(
                Surface.invented(Body.JUPITER, 156), MoonsTest::sky, bands, 0.01, moon ? List.of(io) : List.of());
        Camera camera = Camera.withNorthAngle(250, 250, 0.25, 11, false, sky(EPOCH));
        Map<String, Shot> shots = new LinkedHashMap<>();
        List<Band> order = List.of(Band.R, Band.G, Band.B);
        for (int i = 0; i < 3; i++) {
            Instant start = EPOCH.plusSeconds(240L * (i - 1) - 60);
            shots.put(
                    "j-" + order.get(i).name() + ".fits",
                    new Shot(
                            order.get(i),
                            new RecordingSpan(start, start.plusSeconds(120)),
                            camera.offsetBy(1.7 * i - 4, 3 - i),
                            5,
                            List.of(),
                            new Noise(300, 0.1, 31 + i)));
        }
        return new DemoSession(Body.JUPITER, SITE, EPOCH, scene, shots, Map.of());
    }

    private Combination combined(DemoSession session, boolean moons) {
        session.write(folder, true);
        FrameSource source = new FrameSource(NameClock.UNSAID, Map.of(), LeapSeconds::taiMinusUtcS);
        List<DatedFrame> frames = new ArrayList<>();
        session.shots().keySet().forEach(name -> frames.add(source.find(FrameRequest.of(folder.resolve(name)))));
        return new Combiner(new Recipe(
                        frames,
                        Body.JUPITER,
                        Optional.of(SITE),
                        Optional.empty(),
                        Optional.of(EPOCH),
                        OptionalDouble.of(11),
                        Mirroring.NO,
                        OptionalDouble.empty(),
                        Mount.EQUATORIAL,
                        Optional.of(Body.JUPITER.defaultSystem()),
                        true,
                        false,
                        false,
                        moons))
                .combine(Progress.NONE);
    }

    @Test
    void aTransitStaysOneMoonAndOneShadow() {
        DemoSession session = session(true);
        Combination with = combined(session, true);
        Combination without = combined(session, false);
        List<Rendered> truth = session.truth();
        assertEquals(2, with.moons().size());
        TrueDisk disk = truth.get(1).disk();
        double north = Math.toRadians(disk.northAngleDeg());
        SceneMoon.Place place = place(EPOCH);
        double x = disk.x()
                + disk.equatorialRadiusPx() * (-place.up() * Math.sin(north) + place.abeam() * Math.cos(north));
        double y =
                disk.y() - disk.equatorialRadiusPx() * (place.up() * Math.cos(north) + place.abeam() * Math.sin(north));
        MoonResult moon =
                with.moons().stream().filter(m -> !m.shadow()).findFirst().orElseThrow();
        MoonResult shadow =
                with.moons().stream().filter(MoonResult::shadow).findFirst().orElseThrow();
        // a blur of 1.3 px and markings below the moon: a fifth of a pixel is what a single fit can do
        assertEquals(0, Math.hypot(moon.x() - x, moon.y() - y), 0.2, moon + " is not at " + x + ", " + y);
        assertKept("moon", window(x, y, disk), with, without, truth);
        assertKept("shadow", window(shadow.x(), shadow.y(), disk), with, without, truth);
    }

    /** A window of two radii and a blur or so about a spot. */
    private static TrueDisk window(double x, double y, TrueDisk disk) {
        return new TrueDisk(x, y, 3.2 * RADIUS * disk.equatorialRadiusPx(), 0, false);
    }

    private static void assertKept(
            String what, TrueDisk window, Combination with, Combination without, List<Rendered> truth) {
        PictureMatch[] match = new PictureMatch[3];
        double error = 0;
        double plain = 0;
        for (int k = 0; k < 3; k++) {
            match[k] = PictureMatch.of(with.cube().planes().get(k), truth.get(k).pixels(), window);
            error += match[k].error() / 3;
            plain +=
                    PictureMatch.of(without.cube().planes().get(k), truth.get(k).pixels(), window)
                                    .error()
                            / 3;
            System.out.println(what + k + " " + match[k]);
        }
        for (int k = 0; k < 3; k += 2) {
            double apart = Math.hypot(match[k].shiftX() - match[1].shiftX(), match[k].shiftY() - match[1].shiftY());
            System.out.println(what + " apart " + apart);
            assertTrue(apart < 0.1, what + " of plane " + k + " lies " + apart + " px off green");
        }
        System.out.println(what + " error " + error + " without " + plain);
        assertTrue(error < 0.5 * plain, what + ": error " + error + ", without care for moons " + plain);
    }

    /** The detail of the globe, moon and shadow left out, is as good as in a session without them. */
    @Test
    void theGlobeAroundIsAsGood() {
        DemoSession session = session(true);
        Combination with = combined(session, true);
        DemoSession empty = session(false);
        Combination bare = combined(empty, true);
        assertTrue(bare.moons().isEmpty(), "found where none is: " + bare.moons());
        for (int k = 0; k < 3; k++) {
            double error = around(with, session.truth().get(k), k, with);
            double usual = around(bare, empty.truth().get(k), k, with);
            System.out.println("around " + k + " " + error + " usual " + usual);
            // the rims of moon and shadow are blurred three times and the ground below them is smooth
            assertTrue(error < 1.25 * usual + 0.001, "plane " + k + " " + error + ", usual " + usual);
        }
    }

    /** Rms departure from the truth within the middle of the disk, beyond three radii from moon and shadow. */
    private static double around(Combination c, Rendered truth, int plane, Combination where) {
        TrueDisk disk = truth.disk();
        double own = 0;
        double right = 0;
        double both = 0;
        for (int y = 0; y < truth.pixels().height(); y++) {
            for (int x = 0; x < truth.pixels().width(); x++) {
                int px = x;
                int py = y;
                boolean near = where.moons().stream()
                        .anyMatch(m -> Math.hypot(px - m.x(), py - m.y()) < 3 * RADIUS * disk.equatorialRadiusPx());
                if (!near && Math.hypot(x - disk.x(), y - disk.y()) < 0.7 * disk.equatorialRadiusPx()) {
                    double t = truth.pixels().at(x, y);
                    double r = c.cube().planes().get(plane).at(x, y);
                    own += r * r;
                    right += t * t;
                    both += r * t;
                }
            }
        }
        double squares = right - both * both / own;
        return Math.sqrt(squares / right);
    }
}
