package org.epochrome.moon.removal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.epochrome.ephemeris.Body;
import org.epochrome.image.Plane;
import org.epochrome.image.Region;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.moon.PaintedFrame;
import org.epochrome.moon.fit.MoonField;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Clouds below a spot by what another frame saw, where the true ones are known: random fields as fine as the blur lets pass. */
class BackgroundTest {
    private static final double CLOUDS = 0.06;
    private static final double NOISE = 0.001;
    private static final double SPOT_PX = 6;
    private static final int MIDDLE = 20;
    private static final int SIDE_PX = 2 * MIDDLE + 1;

    private MoonField field;
    private Region window;
    private Plane cover;
    private int hidden;

    /** The middle of a globe, a spot in the middle of a window there. */
    @BeforeEach
    void evenGlobe() {
        PaintedFrame painted = new PaintedFrame(Body.JUPITER, Instant.parse("2024-12-18T19:24:30Z"), 0.3, -0.2);
        field = MoonField.of(painted.frame(), painted.plane());
        int left = PaintedFrame.SIDE / 2 - MIDDLE;
        window = new Region(left, left, SIDE_PX, SIDE_PX);
        cover = new Plane(SIDE_PX, SIDE_PX);
        for (int p = 0; p < cover.data().length; p++) {
            cover.data()[p] = hidden(p) ? 1 : 0;
            hidden += hidden(p) ? 1 : 0;
        }
    }

    private boolean hidden(int p) {
        return Math.hypot(p % SIDE_PX - MIDDLE, Math.floorDiv(p, SIDE_PX) - MIDDLE) < SPOT_PX;
    }

    /** Clouds of a contrast, parts of the even light. */
    private Plane clouds(long seed) {
        Plane sharp = noise(seed, 1);
        Plane soft = Gaussian.blur(sharp, 1.5 * PaintedFrame.BLUR_PX);
        double squares = 0;
        for (float v : soft.data()) {
            squares += v * v / soft.data().length;
        }
        return scaled(soft, CLOUDS / Math.sqrt(squares));
    }

    private Plane noise(long seed, double sigma) {
        Random random = new Random(seed);
        Plane plane = new Plane(SIDE_PX, SIDE_PX);
        for (int p = 0; p < plane.data().length; p++) {
            plane.data()[p] = (float) (sigma * random.nextGaussian());
        }
        return plane;
    }

    private static Plane scaled(Plane plane, double factor) {
        Plane result = plane.copy();
        for (int p = 0; p < result.data().length; p++) {
            result.data()[p] *= (float) factor;
        }
        return result;
    }

    private static Plane sum(Plane a, Plane b) {
        Plane result = a.copy();
        for (int p = 0; p < result.data().length; p++) {
            result.data()[p] += b.data()[p];
        }
        return result;
    }

    private static SurfaceSighting seen(Plane clouds) {
        return new SurfaceSighting(clouds, new Plane(clouds.width(), clouds.height()));
    }

    private int at(int p) {
        return (window.top() + Math.floorDiv(p, SIDE_PX)) * field.even().width() + window.left() + p % SIDE_PX;
    }

    /**
     * What is guessed of the clouds below the spot, rms of the hidden pixels; all but what is said less a smooth surface, which the
     * fit of a spot takes up.
     *
     * @param off how far it is off the true ones
     * @param fill the same if nothing is guessed
     * @param guessed the guess
     * @param said its error as it is said
     */
    private record Guess(double off, double fill, double guessed, double said) {}

    private Guess guess(Plane truth, SurfaceSighting... sights) {
        Plane shown = sum(truth, noise(77, NOISE));
        for (int p = 0; p < shown.data().length; p++) {
            field.light().data()[at(p)] = field.even().data()[at(p)] * (1 + (hidden(p) ? 0 : shown.data()[p]));
        }
        Plane even = field.even().copy();
        Plane rough = field.rough().copy();
        new Background(field, window, cover, List.of(sights)).lay(even, rough);
        Plane guess = new Plane(SIDE_PX, SIDE_PX);
        double said = 0;
        for (int p = 0; p < shown.data().length; p++) {
            float light = field.even().data()[at(p)];
            guess.data()[p] = even.data()[at(p)] / light - 1;
            said += hidden(p) ? Math.pow(rough.data()[at(p)] / light, 2) / hidden : 0;
        }
        return new Guess(bent(sum(guess, scaled(truth, -1))), bent(truth), bent(guess), Math.sqrt(said));
    }

    /** Rms of the hidden pixels less the quadratic surface that fits them best. */
    private double bent(Plane plane) {
        double[][] terms = new double[hidden][];
        double[] values = new double[hidden];
        int n = 0;
        for (int p = 0; p < plane.data().length; p++) {
            if (hidden(p)) {
                double x = p % SIDE_PX - MIDDLE;
                double y = Math.floorDiv(p, SIDE_PX) - MIDDLE;
                terms[n] = new double[] {x, y, x * x, x * y, y * y};
                values[n++] = plane.data()[p];
            }
        }
        OLSMultipleLinearRegression surface = new OLSMultipleLinearRegression();
        surface.newSampleData(values, terms);
        return Math.sqrt(surface.calculateResidualSumOfSquares() / hidden);
    }

    /** Measured 0.03 to 0.06 of what the fill leaves: the noise. */
    private static void assertGivenBack(Guess guess) {
        assertTrue(guess.off < 0.1 * guess.fill, guess.toString());
        // what is said is how far the frame lies off, with its own noise
        assertEquals(1, guess.said / Math.hypot(guess.off, NOISE), 0.3, guess.toString());
    }

    @Test
    void cloudsThatGoTogetherAreGivenBack() {
        Plane truth = clouds(1);
        Guess guess = guess(truth, seen(sum(scaled(truth, 0.6), noise(2, NOISE))));
        assertGivenBack(guess);
    }

    @Test
    void whatIsBrightInOneBandAndDarkInAnotherIsTurnedOver() {
        Plane truth = clouds(3);
        Guess guess = guess(truth, seen(sum(scaled(truth, -0.6), noise(4, NOISE))));
        assertGivenBack(guess);
    }

    @Test
    void twoBandsTellMoreThanOne() {
        Plane one = clouds(8);
        Plane other = clouds(9);
        Plane truth = sum(scaled(one, 0.8), scaled(other, -0.5));
        Guess guess = guess(truth, seen(sum(one, noise(10, NOISE))), seen(sum(other, noise(11, NOISE))));
        assertGivenBack(guess);
        Guess half = guess(truth, seen(one));
        assertTrue(half.off > 2 * guess.off && half.off < half.fill, half.toString());
    }

    /** Six worlds, each asked of four that have nothing to do with it. */
    @Test
    void cloudsOfAnotherKindTellNothing() {
        double squares = 0;
        for (int i = 0; i < 6; i++) {
            Guess guess = guess(
                    clouds(20 + i),
                    seen(clouds(30 + i)),
                    seen(clouds(40 + i)),
                    seen(clouds(50 + i)),
                    seen(clouds(60 + i)));
            assertTrue(guess.off < 1.15 * guess.fill, guess.toString());
            squares += guess.guessed * guess.guessed / 6;
            // as it says
            assertEquals(CLOUDS, guess.said, 0.25 * CLOUDS, guess.toString());
        }
        // measured 0.13 of the clouds, as chance has it in so small a window
        assertEquals(0, Math.sqrt(squares), 0.17 * CLOUDS);
    }

    @Test
    void whatNobodySawIsNotGuessed() {
        Plane truth = clouds(12);
        SurfaceSighting blind = seen(scaled(truth, 0.6));
        for (int p = 0; p < cover.data().length; p++) {
            blind.doubt().data()[p] = hidden(p) ? SurfaceSighting.NOTHING : 0;
        }
        assertEquals(0, guess(truth, blind).guessed, 1e-6);
    }
}
