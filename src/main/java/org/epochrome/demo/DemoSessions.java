package org.epochrome.demo;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.epochrome.atmosphere.Air;
import org.epochrome.atmosphere.Dispersion;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.RingSystem;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.SceneMoon;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.io.file.OutputRefused;
import org.epochrome.time.RecordingSpan;

/** The sessions that come with the program: invented surfaces under the true sky of a real site and instant. */
public final class DemoSessions {
    private static final double BACKGROUND = 0.012;
    private static final int MOMENTS = 5;
    private static final int WAVELENGTHS = 7;

    /** Numbers of the sky are rounded to this part of a degree or arcsec, so that no platform's last bits show. */
    private static final double PIN = 1e7;

    private DemoSessions() {}

    /** Jupiter high in a winter evening: one round of three FITS frames with their times in the headers. */
    public static DemoSession jupiter() {
        Body body = Body.JUPITER;
        Site site = new Site(46.2, 8.5, 480);
        Instant epoch = Instant.parse("2024-12-18T19:24:30Z");
        Function<Instant, Aspect> sky = sky(body, site);
        Map<String, BandSetting> bands = Map.of(
                "R", new BandSetting(0.97, 2.1, 0.86),
                "G", new BandSetting(0.94, 2.0, 0.92),
                "B", new BandSetting(0.88, 2.2, 1.05));
        Scene scene = new Scene(Surface.invented(body, 156), sky, bands, BACKGROUND).with(List.of(crossing(epoch)));
        Camera camera = Camera.withNorthAngle(480, 480, 0.116, 11, false, sky.apply(epoch));
        Duration length = Duration.ofMinutes(2);

        Map<String, Shot> shots = new LinkedHashMap<>();
        shots.put(
                "jupiter-R.fits", shot(Band.R, epoch.minusSeconds(185), length, camera.offsetBy(-3.4, -2.1), sky, 11));
        shots.put("jupiter-G.fits", shot(Band.G, epoch.minusSeconds(60), length, camera.offsetBy(1.2, 0.8), sky, 12));
        shots.put("jupiter-B.fits", shot(Band.B, epoch.plusSeconds(65), length, camera.offsetBy(5.3, 1.6), sky, 13));
        return new DemoSession(
                body, site, epoch, scene, Collections.unmodifiableMap(shots), Map.of("README.md", JUPITER_README));
    }

    /** A yellowish moon of Io's size and pace that no almanac has, before the northern belt, its shadow 0.2 radii behind it. */
    private static SceneMoon crossing(Instant epoch) {
        return new SceneMoon(0.0255, Map.of("R", 0.92, "G", 0.84, "B", 0.56), instant -> {
            double hours = Duration.between(epoch, instant).toMillis() / 3.6e6;
            return new SceneMoon.Place(0.36 + 0.86 * hours, 0.15, 5.8);
        });
    }

    /** A gibbous Mars before opposition: two rounds as PNG and TIFF, whose times stand in a sheet. */
    public static DemoSession mars() {
        Body body = Body.MARS;
        Site site = new Site(40.4, -3.5, 700);
        Instant epoch = Instant.parse("2022-10-26T02:07:00Z");
        Function<Instant, Aspect> sky = sky(body, site);
        Map<String, BandSetting> bands = Map.of(
                "R", new BandSetting(0.70, 2.5, 1.9),
                "G", new BandSetting(0.75, 2.4, 3.4),
                "B", new BandSetting(0.86, 2.6, 6.3));
        Scene scene = new Scene(Surface.invented(body, 314), sky, bands, BACKGROUND);
        Camera camera = Camera.withNorthAngle(360, 360, 0.0485, -24, false, sky.apply(epoch));
        Duration length = Duration.ofMinutes(3);

        double[][] drift = {{-2.3, 1.7}, {1.1, 3.9}, {4.6, -0.6}, {2.2, -4.4}, {-3.8, -1.5}, {-5.1, 2.8}};
        List<Band> order = List.of(Band.R, Band.G, Band.B);
        Map<String, Shot> shots = new LinkedHashMap<>();
        for (int i = 0; i < drift.length; i++) {
            Band band = order.get(i % 3);
            Instant start = epoch.plusSeconds(-565 + 190L * i);
            String file = "mars-" + (i / 3 + 1) + "-" + band.name() + (i < 3 ? ".png" : ".tif");
            shots.put(file, shot(band, start, length, camera.offsetBy(drift[i][0], drift[i][1]), sky, 21 + i));
        }
        return new DemoSession(
                body,
                site,
                epoch,
                scene,
                Collections.unmodifiableMap(shots),
                Map.of("README.md", MARS_README, "session.csv", sheet(shots)));
    }

    /** Saturn near the meridian: three rounds in three formats, the mount flipped before the last of them. */
    public static DemoSession saturn() {
        Body body = Body.SATURN;
        Site site = new Site(-37, 146.5, 300);
        Instant epoch = Instant.parse("2021-08-28T12:31:00Z");
        Function<Instant, Aspect> sky = sky(body, site);
        Map<String, BandSetting> bands = Map.of(
                "R", new BandSetting(0.95, 2.3, 0.97),
                "G", new BandSetting(0.91, 2.2, 1.10),
                "B", new BandSetting(0.85, 2.4, 1.43));
        Scene scene = new Scene(Surface.invented(body, 271), sky, bands, BACKGROUND).with(RingSystem.saturn());
        Camera camera = Camera.withNorthAngle(310, 206, 0.158, 8, false, sky.apply(epoch));
        Duration length = Duration.ofMinutes(2);

        double[][] drift = {
            {-2.2, 1.4},
            {0.7, 2.1},
            {1.9, -0.8},
            {2.4, -1.7},
            {-1.1, -2.3},
            {-2.6, 0.9},
            {1.6, 1.8},
            {2.3, 0.4},
            {0.2, -1.2}
        };
        List<Integer> middlesS = List.of(-810, -660, -510, -150, 0, 150, 510, 660, 810);
        List<Band> order = List.of(Band.R, Band.G, Band.B);
        List<String> formats = List.of(".png", ".fits", ".tif");
        Map<String, Shot> shots = new LinkedHashMap<>();
        for (int i = 0; i < drift.length; i++) {
            Band band = order.get(i % 3);
            int round = i / 3;
            Camera there = (round == 2 ? camera.upsideDown() : camera).offsetBy(drift[i][0], drift[i][1]);
            Instant start = epoch.plusSeconds(middlesS.get(i)).minus(length.dividedBy(2));
            String file = "saturn-" + (round + 1) + "-" + band.name() + formats.get(round);
            shots.put(file, shot(band, start, length, there, sky, 41 + i));
        }
        return new DemoSession(
                body,
                site,
                epoch,
                scene,
                Collections.unmodifiableMap(shots),
                Map.of("README.md", SATURN_README, "session.csv", sheet(shots)));
    }

    /**
     * Writes the sessions {@code jupiter}, {@code mars} and {@code saturn} into folders below the given one.
     *
     * @throws OutputRefused if a file exists and may not be replaced, or cannot be written
     */
    public static void write(Path folder, boolean overwrite) {
        jupiter().write(folder.resolve("jupiter"), overwrite);
        mars().write(folder.resolve("mars"), overwrite);
        saturn().write(folder.resolve("saturn"), overwrite);
    }

    private static Shot shot(
            Band band, Instant start, Duration length, Camera camera, Function<Instant, Aspect> sky, long seed) {
        RecordingSpan span = new RecordingSpan(start, start.plus(length));
        Aspect aspect = sky.apply(span.mid());
        double height = aspect.site().orElseThrow().heightM();
        double altitude = aspect.horizontal().orElseThrow().altitudeDeg();
        Dispersion dispersion = new Dispersion(Band.G.passband().effectiveNm(), altitude, Air.standardAt(height));
        List<Double> shifts = new ArrayList<>();
        Passband passband = band.passband();
        for (int i = 0; i < WAVELENGTHS; i++) {
            double part = (i + 0.5) / WAVELENGTHS;
            double nm = passband.fromNm() + part * (passband.toNm() - passband.fromNm());
            shifts.add(pinned(dispersion.shiftArcsec(nm)));
        }
        return new Shot(band, span, camera, MOMENTS, shifts, new Noise(240, 0.15, seed));
    }

    private static String sheet(Map<String, Shot> shots) {
        StringBuilder sheet = new StringBuilder("file,band,start,end\n");
        shots.forEach((file, shot) -> sheet.append(String.join(
                        ",",
                        file,
                        shot.band().name(),
                        shot.span().start().toString(),
                        shot.span().end().toString()))
                .append('\n'));
        return sheet.toString();
    }

    private static Function<Instant, Aspect> sky(Body body, Site site) {
        return instant -> pinned(Ephemeris.aspect(body, instant, Optional.of(site)));
    }

    private static Aspect pinned(Aspect a) {
        Map<RotationSystem, Double> meridians = new EnumMap<>(RotationSystem.class);
        a.centralMeridianDeg().forEach((system, degrees) -> meridians.put(system, pinned(degrees)));
        return new Aspect(
                a.body(),
                a.utc(),
                a.site(),
                meridians,
                pinned(a.subEarthLatitudeDeg()),
                pinned(a.subEarthLatitudeCentricDeg()),
                pinned(a.subSolarLatitudeDeg()),
                pinned(a.subSolarLatitudeCentricDeg()),
                pinned(a.subSolarLongitudeDeg()),
                pinned(a.poleAngleDeg()),
                a.sunPositionAngleDeg(),
                a.phaseAngleDeg(),
                a.distanceAu(),
                a.sunDistanceAu(),
                a.lightTimeS(),
                pinned(a.equatorialDiameterArcsec()),
                a.polarDiameterArcsec(),
                a.phaseDefectArcsec(),
                a.rightAscensionDeg(),
                a.declinationDeg(),
                a.elongationDeg(),
                a.horizontal()
                        .map(h -> new Aspect.Horizontal(
                                pinned(h.altitudeDeg()), pinned(h.azimuthDeg()), pinned(h.parallacticAngleDeg()))));
    }

    private static double pinned(double number) {
        return Math.rint(number * PIN) / PIN;
    }

    private static final String JUPITER_README = """
            # Demo session: Jupiter

            An invented scene, not a photograph: the belts, the oval, the spots and the moon are made up. Only the
            geometry is real: Jupiter's position in the sky, its rotation and tilt, and the atmospheric dispersion are
            those of 2024-12-18 at about 19:24:30 UTC, seen from 46.2 N, 8.5 E, 480 m. The command `demo` writes these
            files again, byte for byte.

            There are three frames of two minutes each, through R, G and B, with their times in the FITS headers. From
            mid-exposure in R to mid-exposure in B the planet rotated by 2.5 degrees, or 9 pixels at the centre of the
            disk, the moon in front of it and its shadow moved by 12 pixels, and the atmosphere shifted blue relative to
            green by more than 4 pixels.

                java -jar target/epochrome.jar combine --body jupiter --site 46.2,8.5,480 \\
                    --out jupiter.png --report jupiter.json \\
                    demo-data/jupiter/jupiter-R.fits demo-data/jupiter/jupiter-G.fits demo-data/jupiter/jupiter-B.fits

            The result should be a picture for 19:24:30 UTC without coloured fringes at the oval, the spots and the limb,
            with one round moon and one round shadow, north about 11 degrees to the left of up, and a report with the
            measured values.
            """;

    private static final String MARS_README = """
            # Demo session: Mars

            An invented scene, not a photograph: the surface markings, the polar caps and the clouds are made up. Only
            the geometry is real: Mars is gibbous (phase angle 32 degrees), as it was on 2022-10-26 at about 02:07 UTC,
            seen from 40.4 N, 3.5 W, 700 m. The command `demo` writes these files again, pixel for pixel.

            There are two rounds through R, G and B, three minutes per frame, the first as PNG, the second as TIFF. The
            files contain no times; these are listed in `session.csv`.

                java -jar target/epochrome.jar combine --body mars --site 40.4,-3.5,700 --north -24 \\
                    --sheet demo-data/mars/session.csv --out mars.png --report mars.json

            The disk of Mars does not show where north is, so the command gives it: 24 degrees to the right of up.

            The result should be a picture for 02:07:00 UTC, with sharp markings in red, clouds and the polar hood in blue,
            all aligned, and no colour along the bright limb or the terminator except that of Mars itself.
            """;

    private static final String SATURN_README = """
            # Demo session: Saturn

            An invented scene, not a photograph: the bands, the spots and the brightness of the rings are made up. Only
            the geometry is real: Saturn with its rings open by 19 degrees, as it was on 2021-08-28 at about 12:31 UTC,
            seen from 37 S, 146.5 E, 300 m, four weeks after opposition, with the globe's shadow on the rings behind it.
            The command `demo` writes these files again, pixel for pixel.

            There are three rounds through R, G and B, two minutes per frame, the first as PNG, the second as FITS, the
            third as TIFF. Between the second and the third round Saturn crossed the meridian and the mount was flipped,
            so the last three frames are upside down. Bands and times are listed in `session.csv`.

                java -jar target/epochrome.jar combine --body saturn --site=-37,146.5,300 \\
                    --sheet demo-data/saturn/session.csv --out saturn.png --report saturn.json

            The result should be a picture for 12:31:00 UTC with north 8 degrees to the left of up, sharp rings and no
            coloured fringes, and, for each of the last three frames, a note that it was rotated by 180 degrees.
            """;
}
