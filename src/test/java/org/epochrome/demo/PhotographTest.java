package org.epochrome.demo;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ForkJoinPool;
import org.epochrome.demo.scene.BandSetting;
import org.epochrome.demo.scene.Camera;
import org.epochrome.demo.scene.Noise;
import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.Scene;
import org.epochrome.demo.scene.Shot;
import org.epochrome.demo.scene.TrueDisk;
import org.epochrome.demo.world.AlbedoMap;
import org.epochrome.demo.world.Surface;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Band;
import org.epochrome.image.Plane;
import org.epochrome.time.RecordingSpan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the camera does to the light: blur, smear, dispersion, noise, levels. */
class PhotographTest {
    private static final RecordingSpan SPAN = HandMade.around(HandMade.EPOCH, Duration.ofMinutes(4));
    private final AlbedoMap stripes =
            AlbedoMap.of(360, 180, (lat, lon) -> 0.5 + 0.3 * Math.sin(Math.toRadians(12 * lon)) + 0.002 * lat);

    private final HandMade hand =
            HandMade.facing(Body.JUPITER, 40, 2).pole(15, -50).turning(870).acrossArcsec(10);
    private final Camera camera = hand.camera(160, 160, 25, false);

    /** The weights of the blur sum to one at any width; what is left is float rounding. */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 1, 2.7, 6})
    void blurMovesLightButKeepsIt(double fwhmPx) {
        Moments sharp = Moments.of(hand.picture(stripes, 0.9, 0, camera));
        Moments blurred = Moments.of(hand.picture(stripes, 0.9, fwhmPx, camera));
        assertEquals(1, blurred.sum() / sharp.sum(), 1e-6);
        assertEquals(sharp.x(), blurred.x(), 1e-5);
        assertEquals(sharp.y(), blurred.y(), 1e-5);
    }

    /** Against a blur of 2 px, from which on the steps of the pixels no longer show in the second moments. */
    @ParameterizedTest
    @ValueSource(doubles = {2.7, 6})
    void blurHasTheWidthAskedFor(double fwhmPx) {
        Moments narrow = Moments.of(hand.picture(stripes, 0.9, 2, camera));
        Moments wide = Moments.of(hand.picture(stripes, 0.9, fwhmPx, camera));
        double variance = (fwhmPx * fwhmPx - 4) / (8 * Math.log(2));
        assertEquals(variance, wide.xx() - narrow.xx(), 1e-4);
        assertEquals(variance, wide.yy() - narrow.yy(), 1e-4);
        assertEquals(0, wide.xy() - narrow.xy(), 1e-4);
    }

    @Test
    void aPlanetBeyondTheEdgeOfTheFrameIsCutOff() {
        Plane whole = hand.picture(stripes, 0.9, 2, camera);
        Camera narrow = new Camera(60, 60, 0.1, camera.celestialNorthDeg(), false, 50, -50);
        Plane part = hand.picture(stripes, 0.9, 2, narrow);
        for (int y = 0; y < 60; y++) {
            for (int x = 0; x < 60; x++) {
                assertEquals(whole.at(x, y + 100), part.at(x, y), 1e-6f);
            }
        }
    }

    @Test
    void aRecordingIsTheMeanOfItsMoments() {
        Scene scene = hand.scene(stripes, 0.9, 2);
        Shot shot = new Shot(Band.G, SPAN, camera, 2, List.of(), Noise.NONE);
        Plane mean = scene.photograph(shot).pixels();
        Plane early = scene.truth(Band.G, camera, SPAN.start().plusSeconds(60)).pixels();
        Plane late = scene.truth(Band.G, camera, SPAN.start().plusSeconds(180)).pixels();
        double largest = 0;
        for (int i = 0; i < mean.data().length; i++) {
            assertEquals(0.5f * (early.data()[i] + late.data()[i]), mean.data()[i], 1e-6f);
            largest = Math.max(largest, Math.abs(early.data()[i] - late.data()[i]));
        }
        assertTrue(largest > 0.05, "the moments differ, by " + largest);
    }

    /** Zenith 50 degrees west of celestial north: with the pole 15 degrees east of it at 25 degrees, at -40 degrees. */
    @ParameterizedTest
    @CsvSource({"false, -40", "true, 90"})
    void dispersionShiftsAndSmearsTowardsTheZenith(boolean mirrored, double zenithAngle) {
        Scene scene = hand.scene(stripes, 0.9, 2);
        Shot plain = Shot.ideal(Band.G, SPAN, hand.camera(160, 160, 25, mirrored));
        List<Double> arcsec = List.of(0.5, 0.2, 0.05, -0.1);
        Rendered dispersed = scene.photograph(plain.dispersed(arcsec));
        Moments before = Moments.of(scene.photograph(plain).pixels());
        Moments after = Moments.of(dispersed.pixels());
        double mean = arcsec.stream().mapToDouble(v -> v / 0.1).average().orElseThrow();
        double variance = arcsec.stream()
                .mapToDouble(v -> Math.pow(v / 0.1 - mean, 2))
                .average()
                .orElseThrow();
        double right = -Math.sin(Math.toRadians(zenithAngle));
        double down = -Math.cos(Math.toRadians(zenithAngle));
        assertEquals(mean * right, after.x() - before.x(), 1e-4);
        assertEquals(mean * down, after.y() - before.y(), 1e-4);
        assertEquals(variance * right * right, after.xx() - before.xx(), 1e-6);
        assertEquals(variance * right * down, after.xy() - before.xy(), 1e-6);
        assertEquals(variance * down * down, after.yy() - before.yy(), 1e-6);
        assertEquals(79.5 + mean * right, dispersed.disk().x(), 1e-9);
        assertEquals(79.5 + mean * down, dispersed.disk().y(), 1e-9);
        Rendered truth = scene.truth(List.of(Band.G), plain.dispersed(arcsec), HandMade.EPOCH)
                .get(0);
        assertEquals(dispersed.disk().x(), truth.disk().x(), 1e-9);
        assertEquals(dispersed.disk().y(), truth.disk().y(), 1e-9);
    }

    /** Sample spreads of n values are good to 1 / sqrt(2 n); five times that is never left by chance. */
    @Test
    void noiseHasTheSpreadOfItsPhotonsAndReadout() {
        Scene scene = new Scene(
                Surface.grey(AlbedoMap.uniform(0.8)),
                HandMade.facing(Body.VENUS, 0, 0).sky(),
                Map.of("G", new BandSetting(0.5, 1, 0.7)),
                0.02);
        Camera large = HandMade.facing(Body.VENUS, 0, 0).camera(440, 440, 0, false);
        Shot clean = Shot.ideal(Band.G, SPAN, large);
        Plane quiet = scene.photograph(clean).pixels();
        Plane noisy = scene.photograph(clean.with(new Noise(100, 0.3, 7))).pixels();
        Plane error = Moments.difference(noisy, quiet);

        double[] inside = patch(error, 120, 120, 200);
        double[] sky = patch(error, 0, 0, 60);
        check(inside, Math.sqrt(0.8 * 0.7 + 0.09) / 100);
        check(sky, 0.3 / 100);
        double covariance = 0;
        for (int i = 1; i < inside.length; i++) {
            covariance += inside[i] * inside[i - 1] / inside.length;
        }
        double variance = (0.8 * 0.7 + 0.09) / 1e4;
        assertEquals(0, covariance / variance, 5 / Math.sqrt(inside.length), "neighbours are independent");
        assertEquals(0.02 + 0.8 * 0.7, quiet.at(220, 220), 1e-5);
    }

    private static double[] patch(Plane plane, int left, int top, int size) {
        double[] values = new double[size * size];
        for (int i = 0; i < values.length; i++) {
            values[i] = plane.at(left + i % size, top + i / size);
        }
        return values;
    }

    private static void check(double[] values, double sigma) {
        double mean = Arrays.stream(values).average().orElseThrow();
        double spread =
                Math.sqrt(Arrays.stream(values).map(v -> v * v).average().orElseThrow());
        assertEquals(0, mean / sigma, 5 / Math.sqrt(values.length));
        assertEquals(1, spread / sigma, 5 / Math.sqrt(2.0 * values.length));
    }

    @Test
    void theSamePictureComesOutOnAnyNumberOfThreads() throws Exception {
        Scene scene = hand.scene(stripes, 0.9, 2);
        Shot shot =
                Shot.ideal(Band.G, SPAN, camera).with(new Noise(100, 0.3, 7)).dispersed(List.of(0.1, -0.1));
        float[] one = inPoolOf(1, scene, shot);
        assertArrayEquals(one, inPoolOf(3, scene, shot));
        assertArrayEquals(one, inPoolOf(1, scene, shot));
        assertFalse(Arrays.equals(one, inPoolOf(1, scene, shot.with(new Noise(100, 0.3, 8)))));
    }

    private static float[] inPoolOf(int threads, Scene scene, Shot shot) throws Exception {
        ForkJoinPool pool = new ForkJoinPool(threads);
        try {
            return pool.submit(() -> scene.photograph(shot).pixels().data()).get();
        } finally {
            pool.shutdown();
        }
    }

    @Test
    void sixteenBitsAreRoundedAndClipped() {
        Plane levels = new Plane(4, 1, new float[] {-0.1f, 0.5f, 1.2f, 10.4f / 65535});
        Plane counts = new Rendered(levels, new TrueDisk(0, 0, 1, 0, false)).sixteenBit();
        assertArrayEquals(new float[] {0, 32768, 65535, 10}, counts.data());
    }

    @Test
    void whatCannotBePhotographedIsRefused() {
        Scene scene = hand.scene(stripes, 0.9, 2);
        assertThrows(IllegalArgumentException.class, () -> scene.photograph(Shot.ideal(Band.R, SPAN, camera)));
        assertThrows(IllegalArgumentException.class, () -> new BandSetting(0.9, -1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Noise(0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new Shot(Band.G, SPAN, camera, 0, List.of(), Noise.NONE));
    }
}
