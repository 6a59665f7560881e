package org.epochrome.session;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.epochrome.atmosphere.Air;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.demo.world.Surface;
import org.epochrome.disk.DispersionDeconvolution;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.image.Passband;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Light;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.time.RecordingSpan;

/**
 * R, G and B of a small planet that rises, at an altitude, drawn out and moved apart by the air along the true vertical. The
 * pictures are clean: noise is added as they are written, so that one picture serves several noises.
 */
public final class LowNight {
    public static final List<Band> BANDS = List.of(Band.R, Band.G, Band.B);
    static final double NORTH = 11;
    private static final Site SITE = new Site(40.4, -3.5, 700);
    private static final double BACKGROUND = 0.01;
    private static final double READOUT = 0.1;
    /** Steps of a smear, at most, in standard deviations of the blur: the ripple of a row of Gaussians is then 3e-4. */
    private static final double STEP_SIGMAS = 1.5;

    /** A planet on a night of which each altitude is tried as the planet climbs to it. */
    public enum Evening {
        JUPITER(Body.JUPITER, "2024-12-18T14:00:00Z", new double[][] {{0.97, 0.86}, {0.94, 0.92}, {0.88, 1.05}}),
        /** Half a day before opposition, phase angle 1.5 degrees. */
        FULL_MARS(Body.MARS, "2022-12-07T16:00:00Z", new double[][] {{0.70, 1.9}, {0.75, 3.4}, {0.86, 6.3}}),
        /** Phase angle 32 degrees. */
        GIBBOUS_MARS(Body.MARS, "2022-10-25T18:00:00Z", new double[][] {{0.70, 1.9}, {0.75, 3.4}, {0.86, 6.3}});

        private final Body body;
        private final Instant beforeRising;
        /** Of R, G and B: the exponent of the limb, the gain. */
        private final double[][] light;

        Evening(Body body, String beforeRising, double[][] light) {
            this.body = body;
            this.beforeRising = Instant.parse(beforeRising);
            this.light = light;
        }

        private Aspect aspect(Instant instant) {
            return Ephemeris.aspect(body, instant, Optional.of(SITE));
        }

        private Instant at(double altitudeDeg) {
            Instant at = beforeRising;
            while (aspect(at).horizontal().orElseThrow().altitudeDeg() < altitudeDeg) {
                at = at.plusSeconds(60);
            }
            return at;
        }

        private Map<String, BandSetting> bands(double blurFwhmPx) {
            Map<String, BandSetting> bands = new LinkedHashMap<>();
            for (int k = 0; k < light.length; k++) {
                bands.put(BANDS.get(k).name(), new BandSetting(light[k][0], blurFwhmPx, light[k][1]));
            }
            return bands;
        }
    }

    private final Evening evening;
    private final double blurFwhmPx;
    private final double radiusPx;
    private final Instant epoch;
    private final Scene scene;
    private final Map<String, Rendered> clean = new LinkedHashMap<>();
    private final Map<String, Shot> shots = new LinkedHashMap<>();

    public LowNight(Evening evening, Surface surface, double altitudeDeg, double blurFwhmPx, double radiusPx) {
        this.evening = evening;
        this.radiusPx = radiusPx;
        this.blurFwhmPx = blurFwhmPx;
        this.epoch = evening.at(altitudeDeg);
        scene = new Scene(surface, evening::aspect, evening.bands(blurFwhmPx), BACKGROUND);
    }

    public Camera camera() {
        Aspect middle = evening.aspect(epoch);
        double scale = 0.5 * middle.equatorialDiameterArcsec() / radiusPx;
        int side = (int) (2.9 * radiusPx);
        return Camera.withNorthAngle(side, side, scale, NORTH, false, middle);
    }

    /** Three frames, a minute and a half from one to the next, each a little elsewhere. */
    LowNight inTurn() {
        Random drift = new Random(5);
        for (Band band : BANDS) {
            double middleS = 90 * (BANDS.indexOf(band) - 1);
            take(band, middleS, camera().offsetBy(3 * drift.nextDouble() - 1.5, 3 * drift.nextDouble() - 1.5));
        }
        return this;
    }

    public LowNight take(Band band, double middleS, Camera camera) {
        Instant start = epoch.plusMillis(Math.round(1000 * (middleS - 10)));
        RecordingSpan span = new RecordingSpan(start, start.plusSeconds(20));
        double altitude = evening.aspect(span.mid()).horizontal().orElseThrow().altitudeDeg();
        Air air = Air.standardAt(SITE.heightM());
        Passband green = Band.G.passband();
        List<Double> ends = TracedLight.shiftsArcsec(band.passband(), green, 2, altitude, air);
        double lengthPx = 2 * Math.abs(ends.get(1) - ends.get(0)) / camera.arcsecPerPx();
        int parts = Math.max(5, (int) Math.ceil(lengthPx / (STEP_SIGMAS * blurFwhmPx / 2.355)));
        Shot shot = new Shot(
                band,
                span,
                camera,
                1,
                TracedLight.shiftsArcsec(band.passband(), green, parts, altitude, air),
                Noise.NONE);
        shots.put(band.name(), shot);
        clean.put(band.name(), scene.photograph(shot));
        return this;
    }

    Shot shot(Band band) {
        return shots.get(band.name());
    }

    TrueDisk disk(Band band) {
        return clean.get(band.name()).disk();
    }

    /** A picture with noise; {@code snr} is that of full scale. */
    public Plane noisy(Band band, double snr, long seed) {
        Noise noise = new Noise(snr, READOUT, seed);
        Random dice = new Random(seed);
        Plane plane = clean.get(band.name()).pixels().copy();
        for (int i = 0; i < plane.data().length; i++) {
            float level = plane.data()[i];
            plane.data()[i] = level + (float) (noise.sigma(level - BACKGROUND) * dice.nextGaussian());
        }
        return plane;
    }

    /** The frames, one per band, written with noise. */
    Recipe inThreeFiles(Path folder, double snr, long seed) {
        List<DatedFrame> frames = new ArrayList<>();
        for (Band band : BANDS) {
            Path file = folder.resolve(band.name() + ".fits");
            Plane plane = noisy(band, snr, 10 * seed + BANDS.indexOf(band));
            FitsWriter.write(file, List.of(plane), List.of(), List.of(), true);
            frames.add(InventedNight.dated(file, Optional.of(band), shot(band).span()));
        }
        return recipe(frames);
    }

    /** The planes of a one-shot-colour camera in one file. */
    public Recipe inOneFile(Path folder, List<Plane> planes) {
        return inOneFile(folder, planes, BANDS);
    }

    /** The same, told to have been taken in these bands. */
    public Recipe inOneFile(Path folder, List<Plane> planes, List<Band> told) {
        Path file = folder.resolve("colour.fits");
        FitsWriter.write(file, planes, List.of(), List.of(), true);
        return recipe(List.of(InventedNight.dated(file, told, shot(Band.G).span())));
    }

    private Recipe recipe(List<DatedFrame> frames) {
        return Recipe.usual(frames, evening.body)
                .with(Place.at(SITE))
                .at(Optional.of(epoch))
                .with(new Setup(OptionalDouble.of(NORTH), Mirroring.NO, OptionalDouble.empty(), Mount.EQUATORIAL))
                // the scene turns as a whole, and its light is even over the passbands
                .with(Corrections.usual(evening.body)
                        .by(Optional.of(evening.body.defaultSystem()))
                        .with(Corrections::airFlattening, false)
                        .with(Corrections::light, Light.EVEN));
    }

    /** The same recipe with so much of the smear within the bands undone. */
    static Recipe unsmeared(Recipe recipe, DispersionDeconvolution.Extent extent) {
        return recipe.with(recipe.corrections().with(Corrections::unsmear, extent));
    }

    /** By how much a band was put off its place against green, pixels right and down. */
    double[] off(Combination c, Band band) {
        FrameResult own = result(c, band);
        FrameResult green = result(c, Band.G);
        TrueDisk there = disk(band);
        TrueDisk base = disk(Band.G);
        return new double[] {
            own.disk().x() - green.disk().x() - (there.x() - base.x()),
            own.disk().y() - green.disk().y() - (there.y() - base.y())
        };
    }

    /** What a band would look like at the epoch on the pixels of the green frame, without smear and noise. */
    Plane truth(Band band) {
        return scene.truth(List.of(band), shot(Band.G), epoch).get(0).pixels();
    }

    /**
     * How a picture's band differs from the truth between two radii about green's disk: rms over the brightness of the
     * disk's middle, after the best factor and offset.
     */
    double error(Plane found, Band band, double from, double to) {
        Plane truth = truth(band);
        TrueDisk disk = disk(Band.G);
        SimpleRegression line = new SimpleRegression();
        for (int y = 0; y < truth.height(); y++) {
            for (int x = 0; x < truth.width(); x++) {
                double r = Math.hypot(x - disk.x(), y - disk.y()) / disk.equatorialRadiusPx();
                if (r >= from && r < to) {
                    line.addData(truth.at(x, y), found.at(x, y));
                }
            }
        }
        double middle = line.getSlope() * truth.at((int) disk.x(), (int) disk.y());
        return Math.sqrt(line.getSumSquaredErrors() / line.getN()) / middle;
    }

    public static FrameResult result(Combination c, Band band) {
        return c.frames().stream()
                .filter(f -> f.exposure().band().name().equals(band.name()))
                .findFirst()
                .orElseThrow();
    }
}
