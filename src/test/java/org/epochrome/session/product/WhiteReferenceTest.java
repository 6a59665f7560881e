package org.epochrome.session.product;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.epochrome.colour.Gains;
import org.epochrome.image.Plane;
import org.epochrome.io.file.FrameRefused;
import org.epochrome.io.fits.FitsWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WhiteReferenceTest {
    @TempDir
    private Path folder;

    /** Stars of known light, wider in blue, on a sky of its own colour. Measured: 0.04 % off in red, 0.4 % in blue. */
    @Test
    void aStarTellsTheGains() {
        List<Path> files = List.of(
                grey("r.fits", star(0.30, 2.0, 0.02)),
                grey("g.fits", star(0.40, 2.1, 0.03)),
                grey("b.fits", star(0.10, 2.6, 0.05)));
        Gains gains = WhiteReference.gains(files);
        assertEquals(0.40 * 2.1 * 2.1 / (0.30 * 2 * 2), gains.red(), 0.001 * gains.red());
        assertEquals(1, gains.green());
        assertEquals(0.40 * 2.1 * 2.1 / (0.10 * 2.6 * 2.6), gains.blue(), 0.02 * gains.blue());
    }

    @Test
    void aWhiteTargetTellsThemToo() {
        Path file = folder.resolve("target.fits");
        FitsWriter.write(file, List.of(target(0.6), target(0.5), target(0.25)), List.of(), List.of(), false);
        Gains gains = WhiteReference.gains(List.of(file));
        assertEquals(0.5 / 0.6, gains.red(), 1e-6);
        assertEquals(2, gains.blue(), 1e-6);
    }

    @Test
    void refusesWhatShowsNothing() {
        FrameRefused refused = assertThrows(
                FrameRefused.class, () -> WhiteReference.gains(List.of(grey("dark.fits", star(0, 2, 0.02)))));
        assertTrue(refused.getMessage().contains("dark.fits"), refused.getMessage());
        assertThrows(
                IllegalArgumentException.class,
                () -> WhiteReference.gains(List.of(grey("one.fits", star(0.3, 2, 0.02)))));
    }

    private Path grey(String name, Plane plane) {
        Path file = folder.resolve(name);
        FitsWriter.write(file, List.of(plane), List.of(), List.of(), true);
        return file;
    }

    private static Plane star(double peak, double sigma, double sky) {
        Random random = new Random(4);
        Plane plane = new Plane(80, 64);
        for (int y = 0; y < 64; y++) {
            for (int x = 0; x < 80; x++) {
                double r2 = (x - 37.4) * (x - 37.4) + (y - 30.2) * (y - 30.2);
                double light = peak * Math.exp(-r2 / (2 * sigma * sigma));
                plane.set(x, y, (float) (sky + light + 0.0005 * random.nextGaussian()));
            }
        }
        return plane;
    }

    private static Plane target(double level) {
        Random random = new Random(6);
        Plane plane = new Plane(60, 50);
        for (int i = 0; i < plane.data().length; i++) {
            plane.data()[i] = (float) (level * (1 + 0.01 * random.nextGaussian()));
        }
        return plane;
    }
}
