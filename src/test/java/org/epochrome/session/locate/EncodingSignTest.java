package org.epochrome.session.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FitErrors;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.Wings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Frames with the noise of photons and readout, as the sign sees them; the disk is known, since a fit would take most of the time. */
class EncodingSignTest {
    private static final Globe GLOBE = new Globe(0.935, 0.05, 1, 0, 0);
    private static final Disk DISK = new Disk(120.3, 119.1, 80, 20, false);
    private static final int SIDE = 240;
    private static final Shading SHADING =
            new Shading(0.9, 0, 2.5, Smear.NONE, Wings.of(new double[] {6.25}, new double[] {0.1}));

    private static double srgb(double light) {
        return light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
    }

    private static DoubleUnaryOperator gamma(double gamma) {
        return light -> Math.pow(light, 1 / gamma);
    }

    /**
     * The sign that a globe shows over a sky, cut off at black, encoded and rounded.
     *
     * @param snr signal to noise of the brightest pixels
     * @param levels of the samples, less one
     */
    private static Optional<EncodingSign> sign(double sky, double snr, DoubleUnaryOperator curve, int levels) {
        Plane plane = SHADING.picture(new View(GLOBE, DISK), SIDE, SIDE);
        Random random = new Random(5);
        float[] data = plane.data();
        for (int i = 0; i < data.length; i++) {
            double noise = Math.hypot(0.1, Math.sqrt(Math.max(0, data[i]))) / snr;
            double light = Math.max(0, sky + 0.8 * (data[i] + noise * random.nextGaussian()));
            data[i] = (float) (Math.rint(levels * curve.applyAsDouble(light)) / levels);
        }
        double background = curve.applyAsDouble(Math.max(0, sky));
        double brightness = curve.applyAsDouble(0.8) - background;
        return EncodingSign.in(
                plane,
                GLOBE,
                new FittedDisk(DISK, SHADING, background, brightness, 0.001, new FitErrors(0.05, 0.05, 0.1), 0.003));
    }

    @ParameterizedTest
    @CsvSource({
        "-0.05, 60",
        "-0.05, 300",
        "-0.02, 60",
        "-0.02, 300",
        "-0.02, 3000",
        "-0.01, 300",
        "0, 60",
        "0, 300",
        "0.003, 300",
        "0.02, 300",
        "0.02, 3000"
    })
    void linearFramesAreLeftInPeace(double sky, double snr) {
        assertEquals(Optional.empty(), sign(sky, snr, light -> light, 255), "eight bits");
        assertEquals(Optional.empty(), sign(sky, snr, light -> light, 65535), "sixteen bits");
    }

    @ParameterizedTest
    @CsvSource({
        "-0.02, 60, 2.2",
        "-0.02, 300, 2.2",
        "-0.02, 3000, 2.2",
        "-0.01, 300, 2.2",
        "0, 60, 2.2",
        "0, 300, 2.2",
        "-0.02, 300, 1.8",
        "0, 60, 1.8"
    })
    void levelsNextToACutTellAPower(double sky, double snr, double power) {
        assertEquals(Optional.of(EncodingSign.RARE_LEVELS), sign(sky, snr, gamma(power), 255));
    }

    /** The curve of sRGB is straight next to black, so that only noise can tell it there. */
    @ParameterizedTest
    @CsvSource({"-0.01, 60", "-0.01, 150"})
    void noiseAtTheFootOfTheLimbTellsSrgb(double sky, double snr) {
        assertEquals(Optional.of(EncodingSign.NOISY_LEVELS), sign(sky, snr, EncodingSignTest::srgb, 255));
    }

    @Test
    void noiseOfADarkSkyTellsACurveWithoutACut() {
        assertEquals(Optional.of(EncodingSign.NOISY_LEVELS), sign(0.003, 100, gamma(2.2), 255));
    }

    /** Every sign says why in words of its own, for it may stand beside another's. */
    @Test
    void signsHaveWords() {
        long words = java.util.Arrays.stream(EncodingSign.values())
                .map(EncodingSign::words)
                .distinct()
                .count();
        assertTrue(words == EncodingSign.values().length);
    }
}
