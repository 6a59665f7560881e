package org.epochrome.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.epochrome.demo.Surfaces;
import org.epochrome.demo.world.AlbedoMap;
import org.epochrome.demo.world.Surface;
import org.epochrome.image.Band;
import org.epochrome.session.LowNight.Evening;
import org.epochrome.session.combine.Combination;
import org.epochrome.session.recipe.Place;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Where R and B are put against G, over bodies, altitudes, blurs and noise, through the whole path. The pictures are the
 * demo's ray-caster's, dispersion is that of {@link TracedLight}; neither shares code with the engine.
 */
@Tag("session")
class RegistrationGridTest {
    private static final double RADIUS_PX = 60;
    private static final String REVERSED = "reversed";

    /** An error along one axis, and what the result says about it. */
    private record Place(String scene, double snr, Band band, double offPx, double sigmaPx) {
        double normalised() {
            return offPx / sigmaPx;
        }
    }

    @TempDir
    private static Path folder;

    private static final List<Place> PLACES = new ArrayList<>();

    @BeforeAll
    static void combineAll() {
        Surface jupiter = Surfaces.jupiter();
        Surface mars = Surfaces.mars();
        combine("Jupiter 15", new LowNight(Evening.JUPITER, jupiter, 15, 2, RADIUS_PX), 100);
        combine("Jupiter 30", new LowNight(Evening.JUPITER, jupiter, 30, 4, RADIUS_PX), 20, 100);
        combine("Jupiter 70", new LowNight(Evening.JUPITER, jupiter, 70, 1, RADIUS_PX), 20, 300);
        combine("full Mars 18", new LowNight(Evening.FULL_MARS, mars, 18, 4, RADIUS_PX), 20, 100);
        combine("gibbous Mars 20", new LowNight(Evening.GIBBOUS_MARS, mars, 20, 2, RADIUS_PX), 100, 300);
        combine("gibbous Mars 30", new LowNight(Evening.GIBBOUS_MARS, mars, 30, 1, RADIUS_PX), 100, 300);
        combine("gibbous Mars 60", new LowNight(Evening.GIBBOUS_MARS, mars, 60, 2, RADIUS_PX), 20, 100);
        combine(REVERSED, new LowNight(Evening.JUPITER, reversed(), 30, 3, RADIUS_PX), 100, 100);
    }

    private static void combine(String name, LowNight night, double... snrs) {
        night.inTurn();
        for (double snr : snrs) {
            Combination c = InventedNight.combine(night.inThreeFiles(folder, snr, PLACES.size()));
            for (Band band : List.of(Band.R, Band.B)) {
                double[] off = night.off(c, band);
                double[] sigma =
                        StatedError.px(c.frames(), LowNight.BANDS.indexOf(Band.G), LowNight.BANDS.indexOf(band));
                for (int axis = 0; axis < 2; axis++) {
                    PLACES.add(new Place(name, snr, band, off[axis], sigma[axis]));
                }
            }
        }
    }

    /** Belts, ovals and wisps that are bright in red and green and dark in blue. */
    private static Surface reversed() {
        return new Surface(markings(0.75, 0.15), markings(0.6, 0.25), markings(0.45, -0.25));
    }

    private static AlbedoMap markings(double albedo, double contrast) {
        return AlbedoMap.of(720, 360, (latitude, longitude) -> {
            double lat = Math.toRadians(latitude);
            double lon = Math.toRadians(longitude);
            double belts = 0.6 * Math.cos(9 * lat) + 0.3 * Math.sin(17 * lat);
            double ovals = 0.8 * Math.sin(11 * lon) * Math.exp(-Math.pow((latitude + 22) / 6, 2));
            double wisps = 0.3 * Math.sin(23 * lon + 4 * lat) * Math.cos(31 * lat) + 0.3 * Math.sin(14 * lon - 9 * lat);
            return albedo * (1 + contrast * (belts + ovals + wisps));
        });
    }

    /**
     * The bounds at a signal to noise of 20 and 100 are the project's aims, that at 300 is just over what was measured,
     * 0.0134 to 0.0138 in two throws of the noise.
     */
    @ParameterizedTest
    @CsvSource({"20,16,0.10", "100,24,0.03", "300,12,0.0145"})
    void placesHold(double snr, int count, double mostPx) {
        List<Place> those = PLACES.stream()
                .filter(p -> p.snr == snr && !p.scene.equals(REVERSED))
                .toList();
        assertEquals(count, those.size());
        double rms = rms(those, Place::offPx);
        assertTrue(rms < mostPx, "rms " + rms + " of " + those);
    }

    /** The bound is the project's aim; these two throws of the noise gave 0.010 px. */
    @Test
    void contrastMayBeReversed() {
        List<Place> those =
                PLACES.stream().filter(p -> p.scene.equals(REVERSED)).toList();
        assertEquals(8, those.size());
        double rms = rms(those, Place::offPx);
        assertTrue(rms < 0.03, "rms " + rms + " of " + those);
    }

    /**
     * Errors over what the results say about them, all together; measured 0.692, with a standard error of 0.06 from 60 draws. The
     * stated errors allow for real spread functions, which these scenes do not have.
     */
    @Test
    void statedErrorsHold() {
        assertEquals(60, PLACES.size());
        double rms = rms(PLACES, Place::normalised);
        assertTrue(rms > 0.69 && rms < 1.4, "rms " + rms + " of " + PLACES);
    }

    private static double rms(List<Place> places, ToDoubleFunction<Place> what) {
        return Math.sqrt(
                places.stream().mapToDouble(what).map(v -> v * v).average().orElseThrow());
    }
}
