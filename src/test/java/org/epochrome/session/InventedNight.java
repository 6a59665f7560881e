package org.epochrome.session;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.epochrome.demo.Surfaces;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.Site;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.io.fits.FitsWriter;
import org.epochrome.io.identify.BandChoice;
import org.epochrome.io.identify.Timing;
import org.epochrome.io.read.DatedFrame;
import org.epochrome.io.read.FrameReader;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combination.FrameResult;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Light;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Mount;
import org.epochrome.session.recipe.Place;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.text.Message;
import org.epochrome.time.RecordingSpan;

/** Small frames of an invented Jupiter, as a test wants them, and what comes out of them. */
public final class InventedNight {
    public static final Instant EPOCH = Instant.parse("2024-12-18T19:24:30Z");
    public static final int SIDE = 170;
    public static final double SCALE = 0.36;
    public static final double NORTH = 11;
    private static final Site SITE = new Site(46.2, 8.5, 480);

    private final Path folder;
    private final Scene scene;
    private final Map<String, TrueDisk> disks = new HashMap<>();
    private final List<DatedFrame> frames = new ArrayList<>();

    /** A night with a blur of 2.3 pixels in every band. */
    public InventedNight(Path folder) {
        this(folder, Map.of());
    }

    public InventedNight(Path folder, Map<String, BandSetting> own) {
        this(folder, Surfaces.jupiter(), own);
    }

    public InventedNight(Path folder, Surface surface, Map<String, BandSetting> own) {
        this.folder = folder;
        Map<String, BandSetting> bands = new HashMap<>();
        for (String band : List.of("R", "G", "B", "L", "IR", "UV")) {
            bands.put(band, new BandSetting(0.93, 2.3, 0.8));
        }
        bands.putAll(own);
        scene = new Scene(surface, InventedNight::aspect, bands, 0.01);
    }

    public static Aspect aspect(Instant instant) {
        return Ephemeris.aspect(Body.JUPITER, instant, Optional.of(SITE));
    }

    public static Camera camera() {
        return Camera.withNorthAngle(SIDE, SIDE, SCALE, NORTH, false, aspect(EPOCH));
    }

    public Scene scene() {
        return scene;
    }

    public static Shot shot(Band band, double middleS, Camera camera, double snr, long seed) {
        Instant start = EPOCH.plusMillis(Math.round(1000 * (middleS - 20)));
        Noise noise = snr > 0 ? new Noise(snr, 0.1, seed) : Noise.NONE;
        return new Shot(band, new RecordingSpan(start, start.plusSeconds(40)), camera, 1, List.of(), noise);
    }

    /** Photographs and writes a frame; the suffix of its name is its format. */
    public InventedNight add(String name, Shot shot) {
        return add(name, shot, UnaryOperator.identity());
    }

    public InventedNight add(String name, Shot shot, UnaryOperator<Plane> altered) {
        Rendered picture = scene.photograph(shot);
        FrameWriter.write(folder.resolve(name), altered.apply(picture.sixteenBit()), List.of(), true);
        return known(name, Optional.of(shot.band()), shot, picture.disk());
    }

    /** A frame of floats. */
    InventedNight addFloats(String name, Shot shot) {
        Rendered picture = scene.photograph(shot);
        FitsWriter.write(folder.resolve(name), List.of(picture.pixels()), List.of(), List.of(), true);
        return known(name, Optional.of(shot.band()), shot, picture.disk());
    }

    InventedNight known(String name, Optional<Band> band, Shot shot, TrueDisk disk) {
        frames.add(dated(folder.resolve(name), band, shot.span()));
        disks.put(name, disk);
        return this;
    }

    /** A frame whose band and time a test knows; without a band it has three colours. */
    static DatedFrame dated(Path file, Optional<Band> band, RecordingSpan span) {
        return dated(file, band.map(List::of).orElse(LowNight.BANDS), span);
    }

    /** A frame the bands of whose planes a test knows. */
    static DatedFrame dated(Path file, List<Band> planes, RecordingSpan span) {
        return new DatedFrame(
                FrameRequest.of(file),
                FrameReader.head(file),
                new BandChoice(planes, "test", true, List.of()),
                new Timing(span, Message.of("source.given", "test"), List.of()),
                Optional.empty());
    }

    Path folder() {
        return folder;
    }

    public Recipe recipe() {
        return recipe(Mirroring.NO, Mount.EQUATORIAL);
    }

    public Recipe recipe(Mirroring mirroring, Mount mount) {
        return Recipe.usual(frames, Body.JUPITER)
                .with(Place.at(SITE))
                .at(Optional.of(EPOCH))
                .with(new Setup(OptionalDouble.empty(), mirroring, OptionalDouble.empty(), mount))
                // the scene knows neither dispersion nor flattening by the air
                .with(Corrections.usual(Body.JUPITER)
                        .by(Optional.of(Body.JUPITER.defaultSystem()))
                        .with(Corrections::dispersion, false)
                        .with(Corrections::airFlattening, false)
                        .with(Corrections::light, Light.EVEN));
    }

    public static Combination combine(Recipe recipe) {
        return new Combiner(recipe).combine(Progress.NONE);
    }

    /** How far a frame's disk was put from where it is, in pixels of the output. */
    public double offPx(Combination c, FrameResult f) {
        TrueDisk truth = disk(f);
        return Math.hypot(f.disk().x() - truth.x(), f.disk().y() - truth.y())
                * c.disk().equatorialRadiusPx()
                / truth.equatorialRadiusPx();
    }

    public TrueDisk disk(FrameResult f) {
        return disks.get(f.exposure().frame().head().file().getFileName().toString());
    }

    /** What a band would look like on the output's pixels. */
    public Plane truth(Band band, Shot reference) {
        return scene.truth(List.of(band), reference, EPOCH).get(0).pixels();
    }
}
