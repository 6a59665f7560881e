package org.epochrome.session.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.epochrome.disk.Disk;
import org.epochrome.disk.FitErrors;
import org.epochrome.disk.FittedDisk;
import org.epochrome.disk.Globe;
import org.epochrome.disk.NoiseRatio;
import org.epochrome.disk.Shading;
import org.epochrome.disk.View;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Smear;
import org.epochrome.image.blur.Wings;
import org.epochrome.text.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProcessingCheckTest {
    private static final Globe GLOBE = new Globe(0.935, 0.05, 1, 0, 0);
    private static final Disk DISK = new Disk(60.3, 59.1, 40, 20, false);
    private static final int SIDE = 120;
    private static final double READOUT = 0.001;
    private static final double PHOTONS = 0.004;

    private static Shading shading(double wing) {
        return new Shading(0.9, 0, 1.5, Smear.NONE, Wings.of(new double[] {3.75}, new double[] {wing}));
    }

    /**
     * A globe over a sky of some brightness, with the noise of its photons and of the readout, encoded by a power law.
     *
     * @param gamma light is the sample raised to this power
     */
    private static Plane frame(double sky, double gamma) {
        Plane plane = shading(0.1).picture(new View(GLOBE, DISK), SIDE, SIDE);
        Random random = new Random(7);
        for (int i = 0; i < plane.data().length; i++) {
            double light = sky + 0.8 * plane.data()[i];
            double noise = Math.hypot(READOUT, PHOTONS * Math.sqrt(light));
            plane.data()[i] = (float) Math.pow(Math.max(0, light + noise * random.nextGaussian()), 1 / gamma);
        }
        return plane;
    }

    private static FittedDisk fit(double background, double brightness, double wing) {
        return new FittedDisk(
                DISK, shading(wing), background, brightness, 0.001, new FitErrors(0.05, 0.05, 0.1), 0.003);
    }

    /** A check that finds the same disk whatever the encoding. */
    private static ProcessingCheck check() {
        return new ProcessingCheck((plane, globe, fit) -> fit);
    }

    private static List<String> warnings(boolean linear, Plane plane, FittedDisk fit) {
        ProcessingCheck check = check();
        check.look("b.png", linear, plane, GLOBE, fit);
        return Message.texts(check.warnings());
    }

    private static FittedDisk fitted(double sky, double gamma) {
        double background = Math.pow(sky, 1 / gamma);
        return fit(background, Math.pow(sky + 0.8, 1 / gamma) - background, 0.1);
    }

    /** The root of the sum of squares of what each part adds (Poisson), on the disk at 0.8 of the light, on an even globe. */
    @Test
    void noiseGrowsWithLight() {
        double sky = 0.03;
        double expected = Math.hypot(READOUT, PHOTONS * Math.sqrt(sky + 0.8 * 0.9))
                / Math.hypot(READOUT, PHOTONS * Math.sqrt(sky));
        // the globe is darker towards its limb, by some per cent in the mean, and the scatter is known to some per cent
        assertEquals(
                expected, NoiseRatio.of(frame(sky, 1), GLOBE, fitted(sky, 1)).diskToSky(), 0.1 * expected);
    }

    @ParameterizedTest
    @CsvSource({"0.02", "0.1", "0.3"})
    void linearFramesAreLeftInPeace(double sky) {
        assertEquals(List.of(), warnings(true, frame(sky, 1), fitted(sky, 1)));
    }

    @ParameterizedTest
    @CsvSource({"1.8", "2.2", "2.4"})
    void encodedFramesAreSuspected(double gamma) {
        List<String> warnings = warnings(true, frame(0.03, gamma), fitted(0.03, gamma));
        assertEquals(1, warnings.size());
        assertTrue(warnings.get(0).startsWith("b.png may be encoded"), warnings.get(0));
        assertTrue(warnings.get(0).contains("--encoding"), warnings.get(0));
        assertEquals(List.of(), warnings(false, frame(0.03, gamma), fitted(0.03, gamma)), "somebody says what it is");
    }

    @Test
    void sharpenedFramesAreNamed() {
        List<String> warnings = warnings(true, frame(0.02, 1), fit(0.02, 0.8, -0.4));
        assertEquals(1, warnings.size());
        assertTrue(warnings.get(0).startsWith("b.png has been sharpened"), warnings.get(0));
    }

    /** Where the sky was cut off, a fit may ask for a seam that nobody sees: no warning, but the disk is less sure. */
    @Test
    void noSeamIsSeenBehindACut() {
        Plane cut = frame(0.02, 1);
        for (int i = 0; i < cut.data().length; i++) {
            cut.data()[i] = Math.max(0.025f, cut.data()[i]);
        }
        FittedDisk seam = fit(0.025, 0.8, -0.4);
        assertEquals(List.of(), warnings(true, cut, seam));
        assertEquals(
                Math.hypot(0.05, 0.1 * seam.shading().blurPx()),
                check().look("b.png", true, cut, GLOBE, seam).centreSigmaPx(),
                1e-9);
    }

    @Test
    void disksOfProcessedFramesAreLessSure() {
        FittedDisk plain = fitted(0.03, 1);
        assertEquals(plain, check().look("b.png", true, frame(0.03, 1), GLOBE, plain));
        FittedDisk sharpened = fit(0.02, 0.8, -0.4);
        FittedDisk encoded = fitted(0.03, 2.2);
        double[] doubtPx = {
            0.1 * sharpened.shading().blurPx(), 0.05 * encoded.shading().blurPx()
        };
        assertEquals(
                Math.hypot(0.05, doubtPx[0]),
                check().look("b.png", true, frame(0.02, 1), GLOBE, sharpened).centreSigmaPx(),
                1e-9);
        assertEquals(
                Math.hypot(0.05, doubtPx[1]),
                check().look("b.png", true, frame(0.03, 2.2), GLOBE, encoded).centreSigmaPx(),
                1e-9);
    }

    /** As far as the disk goes when its frame is decoded, by each axis and in the radius. */
    @Test
    void disksOfEncodedFramesAreAsUnsureAsTheEncoding() {
        FittedDisk linear = fitted(0.03, 2.2);
        FittedDisk moved = linear.at(DISK.movedBy(0.3, -0.4).withRadius(DISK.equatorialRadiusPx() - 0.8));
        ProcessingCheck check = new ProcessingCheck((plane, globe, fit) -> moved);
        FittedDisk unsure = check.look("b.png", true, frame(0.03, 2.2), GLOBE, linear);
        double blurPx = linear.shading().blurPx();
        assertEquals(
                Math.sqrt(0.05 * 0.05 + 0.0025 * blurPx * blurPx + 0.125),
                unsure.errors().centrePx(),
                1e-9);
        assertEquals(Math.hypot(0.05, 0.8), unsure.radiusSigmaPx(), 1e-9);
        assertTrue(
                check.warnings().get(0).toString().contains("2.0 % of the radius"),
                check.warnings().toString());
    }

    @Test
    void oneSentenceForAllFrames() {
        ProcessingCheck check = check();
        for (String name : List.of("r.fits", "g.fits")) {
            check.look(name, true, frame(0.02, 1), GLOBE, fit(0.02, 0.8, -0.4));
        }
        assertEquals(1, check.warnings().size());
        assertTrue(
                check.warnings().get(0).toString().startsWith("All frames have been sharpened"),
                check.warnings().toString());
    }
}
