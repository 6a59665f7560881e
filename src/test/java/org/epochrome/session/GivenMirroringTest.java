package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.epochrome.demo.Surfaces;
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
import org.epochrome.image.Band;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.identify.Sheet;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.job.Progress;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Light;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A red frame through a star diagonal among others without, of bodies whose disks do not show it, so that the sheet says it. */
@Tag("session")
class GivenMirroringTest {
    private static final double REGISTERED_PX = 0.05;
    private static final double NORTH_DEG = 20;
    private static final int SIDE = 140;
    private static final List<Band> RGB = List.of(Band.R, Band.G, Band.B);
    private static final List<Band> LONG = List.of(Band.R, Band.G, Band.B, Band.G);

    @TempDir
    private Path folder;

    /** A planet, when, and how a camera sees it. */
    private record Night(
            Body body,
            Instant epoch,
            Scene scene,
            double scaleArcsec,
            List<Band> bands,
            long stepS,
            OptionalDouble north) {
        Aspect aspect(Instant at) {
            return Ephemeris.aspect(body, at, Optional.empty());
        }
    }

    private static Night night(
            Body body,
            String epoch,
            Surface surface,
            double scaleArcsec,
            List<Band> order,
            long stepS,
            OptionalDouble north) {
        Function<Instant, Aspect> sky = at -> Ephemeris.aspect(body, at, Optional.empty());
        Map<String, BandSetting> bands = Map.of(
                "R", new BandSetting(0.70, 3.5, 1.0),
                "G", new BandSetting(0.75, 3.4, 1.2),
                "B", new BandSetting(0.86, 3.6, 1.5));
        Scene scene = new Scene(surface, sky, bands, 0.01);
        return new Night(
                body,
                Instant.parse(epoch),
                body == Body.SATURN ? scene.with(RingSystem.saturn()) : scene,
                scaleArcsec,
                order,
                stepS,
                north);
    }

    private Sheet sheet(Night night, boolean mirrored) throws IOException {
        Path there = Files.createDirectories(folder.resolve(mirrored ? "mirrored" : "plain"));
        List<String> lines = new ArrayList<>(List.of("file,band,start,end,mirrored"));
        for (Band band : night.bands) {
            int k = lines.size() - 2;
            String name = band.name() + k + ".fits";
            boolean over = mirrored && band.equals(Band.R);
            // a diagonal also turns the field
            Camera camera = Camera.withNorthAngle(
                            SIDE, SIDE, night.scaleArcsec, over ? -73 : NORTH_DEG, over, night.aspect(night.epoch))
                    .offsetBy(1.7 * k, 1 - k);
            Instant start = night.epoch.plusSeconds(night.stepS * k - 30);
            RecordingSpan span = new RecordingSpan(start, start.plusSeconds(60));
            Shot shot = new Shot(band, span, camera, 1, List.of(), new Noise(150, 0.15, 31 + k));
            FrameWriter.write(there.resolve(name), night.scene.photograph(shot).sixteenBit(), List.of(), true);
            lines.add(name + "," + band.name() + "," + span.start() + "," + span.end() + "," + (over ? "yes" : ""));
        }
        return Sheet.read(Files.write(there.resolve("sheet.csv"), lines));
    }

    private static Combination combined(Night night, Sheet sheet, OptionalDouble north) {
        return new Combiner(Recipe.usual(
                                Frames.found(
                                        sheet.rows().stream()
                                                .map(FrameRequest::of)
                                                .toList(),
                                        Conventions.UNKNOWN),
                                night.body)
                        .with(Setup.UNKNOWN.with(Setup::northDeg, north))
                        .at(Optional.of(night.epoch))
                        .with(Corrections.usual(night.body)
                                .by(Optional.of(night.body.defaultSystem()))
                                .with(Corrections::dispersion, false)
                                .with(Corrections::light, Light.EVEN)))
                .combine(Progress.NONE);
    }

    private void assertCombinesLikeUnmirrored(Night night) throws IOException {
        Combination plain = combined(night, sheet(night, false), OptionalDouble.of(NORTH_DEG));
        Combination c = combined(night, sheet(night, true), night.north);
        for (int i = 0; i < c.frames().size(); i++) {
            assertEquals(i == 0, c.frames().get(i).disk().mirrored(), "frame " + i);
        }
        SpotMatch m = SpotMatch.of(
                c.cube().red(),
                plain.cube().red(),
                c.disk().x(),
                c.disk().y(),
                0.8 * c.disk().equatorialRadiusPx());
        // measured 0.015 to 0.024
        assertEquals(0, m.off(), REGISTERED_PX, m.toString());
    }

    /** Its frames are too near in time to tell where north is. */
    @Test
    void fullMars() throws IOException {
        assertCombinesLikeUnmirrored(night(
                Body.MARS, "2022-12-07T16:00:00Z", Surfaces.mars(), 0.155, RGB, 240, OptionalDouble.of(NORTH_DEG)));
    }

    @Test
    void gibbousMarsWhoseNorthIsFound() throws IOException {
        assertCombinesLikeUnmirrored(
                night(Body.MARS, "2022-10-25T18:00:00Z", Surfaces.mars(), 0.135, LONG, 700, OptionalDouble.empty()));
    }

    @Test
    void ringedSaturn() throws IOException {
        assertCombinesLikeUnmirrored(night(
                Body.SATURN,
                "2022-09-10T21:00:00Z",
                Surface.invented(Body.SATURN, 5),
                0.36,
                RGB,
                240,
                OptionalDouble.empty()));
    }
}
