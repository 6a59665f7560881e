package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.world.AlbedoMap;
import org.epochrome.demo.world.Surface;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.ephemeris.Aspect;
import org.epochrome.ephemeris.Body;
import org.epochrome.ephemeris.Ephemeris;
import org.epochrome.ephemeris.RotationSystem;
import org.epochrome.image.Band;
import org.epochrome.io.fits.FitsCard;
import org.epochrome.io.identify.Conventions;
import org.epochrome.io.read.FrameRequest;
import org.epochrome.io.write.FrameWriter;
import org.epochrome.job.Progress;
import org.epochrome.map.GlobeMap;
import org.epochrome.map.MapGrid;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.combine.Combiner;
import org.epochrome.session.product.ShadingRemoval;
import org.epochrome.session.recipe.Corrections;
import org.epochrome.session.recipe.Frames;
import org.epochrome.session.recipe.Light;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Recipe;
import org.epochrome.session.recipe.Setup;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Maps of a body without belts: invented lands and a bright cap, photographed by the demo's ray-caster, which shares no
 * geometry with the engine, against their own formula.
 */
@Tag("session")
class MarsMapTest {
    private static final double MINNAERT = 0.7;
    private static final double GAIN = 0.9;
    private static final int SIDE = 240;
    private static final int MAP_PX = 360;
    private static final int WAVES = 40;

    @TempDir
    private Path folder;

    /** Lands with coasts and a bright northern cap. */
    private record Land(List<double[]> waves) {
        static Land of(long seed) {
            Random random = new Random(seed);
            List<double[]> waves = new ArrayList<>();
            for (int k = 0; k < WAVES; k++) {
                double[] wave = new double[5];
                double frequency = 2 + 6 * random.nextDouble();
                for (int i = 0; i < 3; i++) {
                    wave[i] = frequency * random.nextGaussian() / 1.7;
                }
                wave[3] = 2 * Math.PI * random.nextDouble();
                wave[4] = 1 / frequency;
                waves.add(wave);
            }
            return new Land(waves);
        }

        double albedo(double latitudeDeg, double eastDeg) {
            double latitude = Math.toRadians(latitudeDeg);
            double east = Math.toRadians(eastDeg);
            double sum = 0;
            for (double[] wave : waves) {
                sum += wave[4]
                        * Math.sin(wave[0] * Math.cos(latitude) * Math.cos(east)
                                + wave[1] * Math.cos(latitude) * Math.sin(east)
                                + wave[2] * Math.sin(latitude)
                                + wave[3]);
            }
            double land = 1 / (1 + Math.exp(-6 * sum));
            double cap = 1 / (1 + Math.exp(-(latitudeDeg - 72) / 1.5));
            return (0.18 + 0.16 * land) * (1 - cap) + 0.6 * cap;
        }
    }

    /**
     * But for the limb's brightening, which the scene does not have, what is off in a map grows with the logarithm of mu0 mu by as
     * much as the exponent of the limb is off: nothing else matters. Measured rms at phase 32: 0.024 to 0.048 of the albedo (a bright cap at the limb: worst of three views), at
     * phase 1.5: 0.019.
     */
    @ParameterizedTest
    @CsvSource({"2022-10-26T02:00:00Z,1,0.06", "2022-10-26T02:00:00Z,2,0.04", "2022-12-08T02:00:00Z,1,0.03"})
    void mapsAreAsGoodAsTheExponentOfTheLimb(Instant begin, long seed, double bound) throws Exception {
        Land land = Land.of(seed);
        Combination c = combined(begin, land);
        GlobeMap map = GlobeMap.of(ShadingRemoval.surface(c), MapGrid.of(c.aspect(), RotationSystem.SINGLE, MAP_PX));
        View view = new View(Globe.of(c.aspect()), c.disk());
        for (int band = 0; band < 3; band++) {
            Shading shading = c.frames().get(band).limb().shading();
            double[] sums = sums(map, band, view, c, land, shading.brightening());
            double n = sums[0];
            double slope = (sums[4] - sums[1] * sums[2] / n) / (sums[3] - sums[1] * sums[1] / n);
            assertTrue(Math.sqrt(sums[5] / n) < bound, "band " + band + " rms " + Math.sqrt(sums[5] / n));
            assertEquals(MINNAERT - shading.minnaert(), slope, 0.01, "band " + band);
        }
    }

    private static Aspect aspect(Instant instant) {
        return Ephemeris.aspect(Body.MARS, instant, Optional.empty());
    }

    private Combination combined(Instant begin, Land land) throws Exception {
        BandSetting setting = new BandSetting(MINNAERT, 4, GAIN);
        Scene scene = new Scene(
                Surface.grey(AlbedoMap.of(720, 360, land::albedo)),
                MarsMapTest::aspect,
                Map.of("R", setting, "G", setting, "B", setting),
                0.01);
        Aspect there = aspect(begin);
        Camera camera = Camera.withNorthAngle(SIDE, SIDE, there.equatorialDiameterArcsec() / 200, 20, false, there);
        List<FrameRequest> requests = new ArrayList<>();
        for (Band band : List.of(Band.R, Band.G, Band.B)) {
            Instant start = begin.plusSeconds(125L * requests.size());
            Shot shot = new Shot(
                    band,
                    new RecordingSpan(start, start.plusSeconds(10)),
                    camera,
                    1,
                    List.of(),
                    new Noise(200, 0.1, 7 + requests.size()));
            Path file = Files.createDirectories(folder).resolve(band.name() + ".fits");
            List<FitsCard> cards = List.of(
                    new FitsCard("DATE-OBS", start.toString().replace("Z", ""), ""),
                    new FitsCard("EXPTIME", 10.0, ""),
                    new FitsCard("FILTER", band.name(), ""));
            FrameWriter.write(file, scene.photograph(shot).sixteenBit(), cards, false);
            requests.add(FrameRequest.of(file));
        }
        Recipe recipe = Recipe.usual(Frames.found(requests, Conventions.UNKNOWN), Body.MARS)
                .with(Setup.UNKNOWN.oriented(20, Mirroring.NO))
                .with(Corrections.usual(Body.MARS)
                        .by(Optional.of(RotationSystem.SINGLE))
                        .with(Corrections::dispersion, false)
                        .with(Corrections::light, Light.EVEN));
        return new Combiner(recipe).combine(Progress.NONE);
    }

    /**
     * Where all is covered, by area: weight, log mu0 mu, log error less what the fitted brightening makes of it, square of the first
     * and product of the two, square of the whole error.
     */
    private static double[] sums(GlobeMap map, int band, View view, Combination c, Land land, double brightening) {
        double[] sums = new double[6];
        double meridian = c.aspect().centralMeridianDeg(RotationSystem.SINGLE);
        for (int row = 0; row < map.grid().height(); row++) {
            double latitude = map.grid().latitudeDeg(row);
            double area = Math.cos(Math.toRadians(latitude));
            for (int column = 0; column < MAP_PX; column++) {
                if (map.coverage().at(column, row) < 0.99) {
                    continue;
                }
                double east = (column + 0.5) * 360 / MAP_PX;
                View.Place place = view.place(Math.toRadians(latitude), Math.toRadians(meridian + east));
                double pole = view.pole(place.x(), place.y());
                double side = view.side(place.x(), place.y());
                double x = view.bodyX(pole, view.depth(pole, side));
                double z = view.bodyZ(pole, view.depth(pole, side));
                double emission = view.cosEmission(x, side, z);
                double law = Math.log(emission * view.cosIncidence(x, side, z));
                double off = Math.log(map.planes().get(band).at(column, row) / (GAIN * land.albedo(latitude, east)));
                double byExponent = off + brightening * (1 - Math.sqrt(emission));
                double[] all = {1, law, byExponent, law * law, law * byExponent, off * off};
                for (int i = 0; i < all.length; i++) {
                    sums[i] += area * all[i];
                }
            }
        }
        return sums;
    }
}
