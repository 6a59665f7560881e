package org.epochrome.colour.merge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.epochrome.colour.ColourCube;
import org.epochrome.colour.PerceivedLightness;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.junit.jupiter.api.Test;

class LuminanceTest {
    private static final int SIDE = 120;
    private static final double BLUR = 1.2;

    /** A disk with fine and broad detail, sharper than the blur given; the same in all bands but for a factor. */
    private static Plane scene(double level, double blur) {
        Random random = new Random(9);
        Plane plane = new Plane(SIDE, SIDE);
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                double detail = 1 + 0.8 * random.nextGaussian() + 0.2 * Math.sin(0.09 * x);
                plane.set(x, y, Math.hypot(x - 60, y - 60) < 45 ? (float) (level * detail) : 0);
            }
        }
        return Gaussian.blur(plane, blur);
    }

    private static ColourCube cube(double blur) {
        return new ColourCube(scene(0.5, blur), scene(0.4, blur), scene(0.2, blur));
    }

    /** Relative departure of the disk's inside from what it should be, but for a factor. */
    private static double error(Plane plane, Plane truth) {
        double sum = 0;
        double square = 0;
        int n = 0;
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                if (Math.hypot(x - 60, y - 60) < 38) {
                    double ratio = plane.at(x, y) / truth.at(x, y);
                    sum += ratio;
                    square += ratio * ratio;
                    n++;
                }
            }
        }
        return Math.sqrt(square / n - sum * sum / n / n) / (sum / n);
    }

    /** Lightness of white, red, green and blue of sRGB, as CSS Color 4 lists their oklch (from memory, to five digits). */
    @Test
    void lightnessIsThatOfThePrimaries() {
        assertEquals(1, PerceivedLightness.of(1, 1, 1), 1e-5);
        assertEquals(0.62796, PerceivedLightness.of(1, 0, 0), 1e-5);
        assertEquals(0.86644, PerceivedLightness.of(0, 1, 0), 1e-5);
        assertEquals(0.45201, PerceivedLightness.of(0, 0, 1), 1e-5);
        assertEquals(0.5 * PerceivedLightness.of(0.8, 0.3, 0.1), PerceivedLightness.of(0.1, 0.0375, 0.0125), 1e-12);
    }

    @Test
    void aBandLikeTheColoursChangesNothing() {
        ColourCube cube = cube(BLUR);
        ColourCube result = Luminance.exchanged(cube, scene(0.9, BLUR), BLUR, BLUR);
        for (int k = 0; k < 3; k++) {
            for (int i = 0; i < SIDE * SIDE; i++) {
                assertEquals(
                        cube.planes().get(k).data()[i], result.planes().get(k).data()[i], 1e-5);
            }
        }
    }

    /** Colours of twice the blur get the detail of the sharp band, whatever its unit, and keep their ratios. */
    @Test
    void sharpDetailComesFromTheBand() {
        Plane sharp = scene(1, BLUR);
        ColourCube soft = cube(2 * BLUR);
        double before = error(soft.green(), sharp);
        for (double unit : new double[] {1, 0.003, 70}) {
            ColourCube result = Luminance.exchanged(soft, scene(unit, BLUR), 2 * BLUR, BLUR);
            double after = error(result.green(), sharp);
            assertTrue(after < 0.1 * before, after + " after " + before);
            for (int i = 0; i < SIDE * SIDE; i++) {
                float was = soft.red().data()[i];
                if (was > 0.05) {
                    assertEquals(
                            soft.blue().data()[i] / was,
                            result.blue().data()[i] / result.red().data()[i],
                            1e-5);
                }
            }
            assertEquals(mean(soft.green()), mean(result.green()), 0.02 * mean(soft.green()));
        }
    }

    private static double mean(Plane plane) {
        double sum = 0;
        for (float v : plane.data()) {
            sum += v / plane.data().length;
        }
        return sum;
    }

    /** A band blurred twice as much as the colours takes nothing away from them. */
    @Test
    void aBlurredBandBlursNothing() {
        ColourCube sharp = cube(BLUR);
        ColourCube result = Luminance.exchanged(sharp, scene(1, 2 * BLUR), BLUR, 2 * BLUR);
        assertTrue(error(result.green(), sharp.green()) < 1e-5, "off by " + error(result.green(), sharp.green()));
    }

    /** Noise of the colours is exchanged for the band's. */
    @Test
    void theNoiseIsTheBands() {
        Random random = new Random(3);
        ColourCube noisy = cube(BLUR);
        for (Plane plane : noisy.planes()) {
            for (int i = 0; i < plane.data().length; i++) {
                plane.data()[i] *= (float) (1 + 0.05 * random.nextGaussian());
            }
        }
        ColourCube result = Luminance.exchanged(noisy, scene(1, BLUR), BLUR, BLUR);
        Plane own = grey(noisy);
        Plane exchanged = grey(result);
        assertTrue(error(exchanged, scene(1, BLUR)) < 0.2 * error(own, scene(1, BLUR)));
    }

    /** Brightness of the cube's pixels as Oklab has it, planes balanced. */
    private static Plane grey(ColourCube cube) {
        Plane grey = new Plane(SIDE, SIDE);
        for (int i = 0; i < grey.data().length; i++) {
            double lightness = PerceivedLightness.of(
                    cube.red().data()[i] / 0.5,
                    cube.green().data()[i] / 0.4,
                    cube.blue().data()[i] / 0.2);
            grey.data()[i] = (float) Math.pow(lightness, 3);
        }
        return grey;
    }
}
