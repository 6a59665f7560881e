package org.epochrome.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.epochrome.image.Pictures;
import org.epochrome.image.Plane;
import org.epochrome.image.blur.Gaussian;
import org.epochrome.truth.TruthTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DetailWitnessTest {
    /** Detail of this grain is sampled so finely that only the end of the search and splines count. Measured: 0.00012 px. */
    private static final double SAMPLING_PX = 0.0004;

    @ParameterizedTest
    @CsvSource({"0,0", "0.31,-0.17", "-0.5,0.5", "0.25,0.75", "-1.62,0.4", "2.1,-1.3"})
    void findsAShiftBetweenPixels(double dx, double dy) {
        Texture texture = new Texture(1);
        Shift found = DetailWitness.measure(Texture.detail(texture.at(0, 0)), Texture.detail(texture.at(dx, dy)), 0, 0);
        assertShift(dx, dy, found, SAMPLING_PX);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, -0.3, 0.2, 4})
    void doesNotMindContrast(double gain) {
        Texture texture = new Texture(2);
        Plane moved = texture.at(0.4, -0.7);
        Shift found = DetailWitness.measure(
                Texture.detail(texture.at(0, 0)), Texture.detail(Texture.mixed(gain, moved, 0, moved)), 0, 0);
        assertShift(0.4, -0.7, found, SAMPLING_PX);
    }

    /** Filters that focus differently, and a camera turned a little between them. */
    @ParameterizedTest
    @CsvSource({"0.3,-0.2,1.004,0.002", "0,0,0.997,-0.004", "-0.4,0.1,1,0.001", "0.2,0.5,1.002,0"})
    void findsScaleAndDirectionToo(double dx, double dy, double scale, double turnRad) {
        Texture texture = new Texture(21);
        Similarity found = DetailWitness.similarity(
                        Texture.detail(texture.at(0, 0)), Texture.detail(texture.at(dx, dy, scale, turnRad)))
                .orElseThrow();
        assertShift(dx, dy, found.shift(), 0.004);
        // 0.002 px at the rim of 52 pixels
        assertEquals(scale - 1, found.scale(), 0.002 / 52);
        assertEquals(turnRad, found.turnRad(), 0.002 / 52);
    }

    /** Stated errors of scale and direction against those made, over twelve draws of noise. */
    @Test
    void statesTheErrorsOfScaleAndDirection() {
        Texture texture = new Texture(22);
        Plane still = texture.at(0, 0);
        Plane grown = texture.at(0.2, -0.1, 1.003, 0.002);
        double noise = 0.5 * Texture.rms(still);
        double scale = 0;
        double turn = 0;
        int draws = 12;
        for (int k = 0; k < draws; k++) {
            Plane one = Texture.mixed(1, still, 1, Gaussian.blur(Texture.noise(4 * noise, 100 + k), Texture.GRAIN_PX));
            Plane other =
                    Texture.mixed(1, grown, 1, Gaussian.blur(Texture.noise(4 * noise, 200 + k), Texture.GRAIN_PX));
            Similarity found = DetailWitness.similarity(Texture.detail(one), Texture.detail(other))
                    .orElseThrow();
            scale += Math.pow((found.scale() - 0.003) / found.scaleSigma(), 2) / draws;
            turn += Math.pow((found.turnRad() - 0.002) / found.turnSigmaRad(), 2) / draws;
        }
        // the mean square of twelve draws scatters by 0.4
        assertTrue(scale > 0.2 && scale < 2, "scale " + scale);
        assertTrue(turn > 0.2 && turn < 2, "turn " + turn);
    }

    /** Dark in one band and bright in the other on the left, alike on the right, as lands and clouds may be. */
    @Test
    void findsTheShiftWhereContrastChangesItsSignAcrossTheDisk() {
        Texture texture = new Texture(3);
        Plane moved = texture.at(-0.6, 0.35);
        for (int y = 0; y < Texture.SIDE; y++) {
            for (int x = 0; x < Texture.SIDE; x++) {
                float gain = (float) Math.tanh((x - 60) / 12.0);
                moved.set(x, y, gain * moved.at(x, y));
            }
        }
        Shift found = DetailWitness.measure(Texture.detail(texture.at(0, 0)), Texture.detail(moved), 0, 0);
        // The gain is even over a neighbourhood by assumption only; its slope leaves a thousandth.
        assertShift(-0.6, 0.35, found, 0.003);
    }

    /** With one pixel binned away per three, the grid is coarser and the answer still in the pixels of the picture. */
    @Test
    void measuresCoarseDetailOnCoarserPixels() {
        Texture texture = new Texture(4);
        Plane still = Gaussian.blur(texture.at(0, 0), 3.2);
        Plane moved = Gaussian.blur(texture.at(0.8, -0.45), 3.2);
        double grain = Math.hypot(Texture.GRAIN_PX, 3.2);
        Shift found = DetailWitness.measure(
                List.of(new Detail(still, Texture.disk(), grain, 0, 0)),
                List.of(new Detail(moved, Texture.disk(), grain, 0, 0)),
                0,
                0);
        assertShift(0.8, -0.45, found, 0.004); // pixels twice as large
    }

    @Test
    void agreesWithPhaseCorrelation() {
        List<Detail> reference = small("align/reference.csv");
        List<TruthTable.Row> rows = TruthTable.rows("align/rows.csv");
        for (TruthTable.Row row : rows) {
            Shift found = DetailWitness.measure(reference, small("align/" + row.text("file")), 0, 0);
            assertTrue(found.known(), row.toString());
            // The shifts are whole steps of the other method, 0.01 px; so it finds them to the last digit.
            assertEquals(row.number("foundX"), found.x(), SAMPLING_PX, row.toString());
            assertEquals(row.number("foundY"), found.y(), SAMPLING_PX, row.toString());
        }
        assertEquals(4, rows.size());
    }

    private static List<Detail> small(String csv) {
        Plane markings = Pictures.read(csv);
        return List.of(
                new Detail(markings, Plane.filled(markings.width(), markings.height(), 1), Texture.GRAIN_PX, 0, 0));
    }

    /** Where three bands are mixtures of two kinds of markings, no band alone predicts another; two together do. */
    @Test
    void tellsTwoKindsOfMarkingsApartWithThreeBands() {
        Texture lands = new Texture(5);
        Texture clouds = new Texture(6);
        Plane red = Texture.mixed(1, lands.at(0, 0), 0.15, clouds.at(0, 0));
        Plane green = Texture.mixed(0.55, lands.at(0.42, -0.3), 0.5, clouds.at(0.42, -0.3));
        Plane blue = Texture.mixed(-0.1, lands.at(-0.7, 0.55), 1, clouds.at(-0.7, 0.55));
        List<Shift> found = DetailWitness.measure(Texture.detail(green), Texture.detail(red), Texture.detail(blue));
        assertShift(-0.42, 0.3, found.get(0), 0.0015);
        assertShift(-1.12, 0.85, found.get(1), 0.0015);
    }

    /**
     * The answer's error must be about as large as the witness says. White noise of the frames comes as {@link Detail}
     * leaves it, smoothed by 0.3 of the grain: there the witness is timid (measured 0.8), since it takes all that
     * differs as alike over the grain. Markings that only one band has are coarser (measured 0.9).
     */
    @ParameterizedTest
    @CsvSource({"false,0.1", "false,0.3", "false,0.6", "true,0.1", "true,0.3", "true,0.6"})
    void saysHowSureItIs(boolean markings, double otherToCommon) {
        int trials = 40;
        double sum = 0;
        double sigma = 0;
        for (int trial = 0; trial < trials; trial++) {
            Random random = new Random(1000 + trial);
            double dx = 2 * random.nextDouble() - 1;
            double dy = 2 * random.nextDouble() - 1;
            Texture texture = new Texture(100 + trial);
            Plane still = texture.at(0, 0);
            Plane moved = texture.at(dx, dy);
            double rms = otherToCommon * Texture.rms(still);
            Shift found = DetailWitness.measure(
                    markings ? spoilt(still, new Texture(500 + trial).at(0, 0), rms) : noisy(still, rms, 2L * trial),
                    markings
                            ? spoilt(moved, new Texture(700 + trial).at(0, 0), rms)
                            : noisy(moved, rms, 2L * trial + 1),
                    0,
                    0);
            assertTrue(found.known(), "trial " + trial);
            sum += square((found.x() - dx) / found.sigmaX()) + square((found.y() - dy) / found.sigmaY());
            sigma += 0.5 * (found.sigmaX() + found.sigmaY());
        }
        double normalised = Math.sqrt(sum / (2 * trials));
        String measured = "error over sigma " + normalised + ", mean sigma " + sigma / trials + " px";
        // 80 draws tell an rms to 8 %; the rest is what the count of independent pixels may be off.
        assertTrue(normalised > 0.4 && normalised < 1.6, measured);
    }

    /** A frame's detail with white noise in its pixels. */
    private static List<Detail> noisy(Plane markings, double sigma, long seed) {
        return spoilt(markings, Gaussian.blur(Texture.noise(1, seed), 0.3 * Texture.GRAIN_PX), sigma);
    }

    /** A frame's detail with something on top that no other frame has. */
    private static List<Detail> spoilt(Plane markings, Plane other, double rms) {
        return Texture.detail(Texture.mixed(1, markings, rms / Texture.rms(other), other));
    }

    @Test
    void knowsNothingWithoutDetailInCommon() {
        List<Detail> noise = Texture.detail(Texture.noise(0.01, 1));
        List<Detail> other = Texture.detail(Texture.noise(0.01, 2));
        List<Detail> even = Texture.detail(new Plane(Texture.SIDE, Texture.SIDE));
        assertFalse(DetailWitness.measure(noise, even, 0, 0).known());
        assertFalse(DetailWitness.measure(even, noise, 0, 0).known());
        Shift chance = DetailWitness.measure(noise, other, 0, 0);
        assertTrue(!chance.known() || chance.sigmaX() > 0.1, chance.toString());
    }

    @Test
    void doesNotWanderFartherThanItSearches() {
        Texture texture = new Texture(9);
        assertSame(
                Shift.UNKNOWN,
                DetailWitness.measure(Texture.detail(texture.at(0, 0)), Texture.detail(texture.at(9, 0)), 0, 0));
    }

    @Test
    void beginsWhereItIsTold() {
        Texture texture = new Texture(9);
        Shift found =
                DetailWitness.measure(Texture.detail(texture.at(0, 0)), Texture.detail(texture.at(9.2, -6.6)), 9, -7);
        assertShift(9.2, -6.6, found, SAMPLING_PX);
    }

    @Test
    void agreementIsWhatTheReferenceExplains() {
        Texture texture = new Texture(10);
        Detail one = Texture.detail(texture.at(0, 0)).get(0);
        Plane half = Texture.mixed(-0.5, texture.at(0, 0), 0, texture.at(0, 0));
        assertEquals(1, DetailWitness.agreement(one, Texture.detail(half).get(0)), 0.01);
        Plane noise = Texture.noise(Texture.rms(half), 11);
        // As much noise as signal: half is explained, and a little of the noise by the gains of every neighbourhood.
        assertEquals(
                0.5,
                DetailWitness.agreement(
                        one, Texture.detail(Texture.mixed(1, half, 1, noise)).get(0)),
                0.07);
        assertEquals(0, DetailWitness.agreement(one, Texture.detail(noise).get(0)), 0.004);
        assertEquals(
                0,
                DetailWitness.agreement(
                        one,
                        Texture.detail(new Plane(Texture.SIDE, Texture.SIDE)).get(0)),
                0);
    }

    private static void assertShift(double dx, double dy, Shift found, double tolerancePx) {
        assertTrue(found.known());
        assertEquals(dx, found.x(), tolerancePx, found.toString());
        assertEquals(dy, found.y(), tolerancePx, found.toString());
    }

    private static double square(double v) {
        return v * v;
    }
}
