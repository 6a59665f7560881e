package org.epochrome.align;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class FusionTest {
    private static final double ROUNDING = 1e-9;

    @Test
    void leavesTheLimbAloneWithoutDetail() {
        List<Shift> found = corrections(List.of(0.1, 0.3), List.of(detail(0, 1, Shift.UNKNOWN)));
        assertShift(new Shift(0, 0, 0.1, 0.1), found.get(0));
        assertShift(new Shift(0, 0, 0.3, 0.3), found.get(1));
    }

    /**
     * Two frames, one link: what the detail asks for is shared in the ratio of the limbs' variances. By hand, with
     * variances 1, 4 and the detail's 4 along x: the sum a + b + t = 9, so -1/9 and +4/9 of the shift; the variances left
     * are a - a a / 9 and b - b b / 9.
     */
    @Test
    void sharesTheCorrectionByVariance() {
        List<Shift> found = corrections(List.of(1.0, 2.0), List.of(detail(0, 1, new Shift(0.9, -1.8, 2, 1))));
        assertShift(new Shift(-0.1, 0.3, Math.sqrt(1 - 1 / 9.0), Math.sqrt(1 - 1 / 6.0)), found.get(0));
        assertShift(new Shift(0.4, -1.2, Math.sqrt(4 - 16 / 9.0), Math.sqrt(4 - 16 / 6.0)), found.get(1));
    }

    /** Detail without error: frames lie exactly as it says, all of them where the limbs together say. */
    @Test
    void givesInToPerfectDetail() {
        double perfect = 1e-5;
        List<Shift> found = corrections(
                List.of(0.2, 0.2, 0.2),
                List.of(
                        detail(0, 1, new Shift(0.3, 0, perfect, perfect)),
                        detail(0, 2, new Shift(0.6, 0, perfect, perfect))));
        double common = 0.2 / Math.sqrt(3);
        for (int i = 0; i < 3; i++) {
            assertEquals(0.3 * (i - 1), found.get(i).x(), 1e-6);
            assertEquals(common, found.get(i).sigmaX(), 1e-6);
        }
    }

    /** A chain whose two roads to the same frame differ: 0 to 2 directly, and over 1. All limbs know nothing. */
    @Test
    void takesTheMeanOfTwoRoads() {
        double nothing = 1e3;
        List<Shift> found = corrections(
                List.of(1e-4, nothing, nothing),
                List.of(
                        detail(0, 1, new Shift(1, 0, 0.1, 0.1)),
                        detail(1, 2, new Shift(1, 0, 0.1, 0.1)),
                        detail(0, 2, new Shift(2.3, 0, 0.1, 0.1))));
        // The misclosure of 0.3 falls on three equal links, 0.1 each.
        assertEquals(1.1, found.get(1).x(), 1e-4);
        assertEquals(2.2, found.get(2).x(), 1e-4);
        // The direct road's variance of 0.01 beside the other's 0.02.
        assertEquals(Math.sqrt(1 / (1 / 0.01 + 1 / 0.02)), found.get(2).sigmaX(), 1e-4);
    }

    /** Drawn by the very errors that are stated, the corrected centres must scatter by what is stated. */
    @Test
    void statesTheScatterOfItsAnswers() {
        Random random = new Random(12);
        List<Double> limb = List.of(0.1, 0.25, 0.15);
        int trials = 4000;
        double[] squares = new double[3];
        for (int trial = 0; trial < trials; trial++) {
            double[] error = new double[3];
            for (int i = 0; i < 3; i++) {
                error[i] = limb.get(i) * random.nextGaussian();
            }
            List<Link> links = new ArrayList<>();
            for (int to = 1; to < 3; to++) {
                double apart = error[0] - error[to] + 0.05 * random.nextGaussian();
                links.add(detail(0, to, new Shift(apart, 0, 0.05, 0.05)));
            }
            List<Shift> found = corrections(limb, links);
            for (int i = 0; i < 3; i++) {
                double left = (error[i] + found.get(i).x()) / found.get(i).sigmaX();
                squares[i] += left * left / trials;
            }
        }
        for (double s : squares) {
            assertEquals(1, s, 0.07); // three standard errors of a variance from 4000 draws
        }
    }

    /**
     * A blunder of the detail between two of four frames that are linked in a ring is found by what the other links say, and
     * what is left is as if it had never been there.
     */
    @ParameterizedTest
    @EnumSource(Witness.class)
    void leavesOutWhatContradictsTheRest(Witness wrong) {
        List<Double> limb = new ArrayList<>(List.of(0.05, 0.05, 0.05));
        List<Link> links = new ArrayList<>();
        for (Witness witness : List.of(Witness.DETAIL, Witness.PHYSICS)) {
            for (int[] pair : new int[][] {{0, 1}, {1, 2}, {0, 2}}) {
                double off = witness == wrong && pair[0] == 1 ? 0.8 : 0;
                links.add(new Link(pair[0], pair[1], new Shift(off, 0, 0.05, 0.05), witness));
            }
        }
        if (wrong == Witness.LIMB) {
            // the third frame's limb lies 0.8 off, so all links correct it back
            links.replaceAll(l -> l.to() == 2 ? new Link(l.from(), 2, new Shift(-0.8, 0, 0.05, 0.05), l.witness()) : l);
        }
        Fusion.Fused fused = fused(limb, links);
        assertEquals(List.of(false, false, wrong == Witness.LIMB), fused.limbsLeftOut());
        for (int k = 0; k < links.size(); k++) {
            boolean blunder = wrong != Witness.LIMB
                    && links.get(k).witness() == wrong
                    && links.get(k).from() == 1;
            assertEquals(blunder, fused.linksLeftOut().get(k), "link " + k);
        }
        double expected = wrong == Witness.LIMB ? -0.8 : 0;
        assertEquals(expected, fused.corrections().get(2).x(), 1e-6);
    }

    @Test
    void givesUpTheDetailWhereNobodyCanTellWhoErrs() {
        Fusion.Fused fused = fused(List.of(0.03, 0.03), List.of(detail(0, 1, new Shift(1.2, 0, 0.02, 0.02))));
        assertEquals(List.of(true), fused.linksLeftOut());
        assertShift(new Shift(0, 0, 0.03, 0.03), fused.corrections().get(1));
    }

    /** The same two frames, but the second's disk does not resemble its model: who fits nothing is not heard. */
    @Test
    void givesUpALimbThatItsModelDoesNotFit() {
        List<Limb> limbs = List.of(Limb.alone(0.03), new Limb(0.03, 0, 0, List.of(), true));
        Fusion.Fused fused = Fusion.of(limbs, List.of(detail(0, 1, new Shift(1.2, 0, 0.02, 0.02))), 0);
        assertEquals(List.of(false, true), fused.limbsLeftOut());
        assertEquals(List.of(false), fused.linksLeftOut());
        assertEquals(0, fused.corrections().get(0).x(), 1e-6);
        assertEquals(0.03, fused.corrections().get(0).sigmaX(), 1e-6);
        // All that is left of the second is where the detail puts it against the first.
        assertEquals(1.2, fused.corrections().get(1).x(), 1e-6);
        assertEquals(Math.hypot(0.03, 0.02), fused.corrections().get(1).sigmaX(), 1e-6);
    }

    /** Detail that is measured badly does not outvote a limb, whatever its model left. */
    @Test
    void keepsAMisfittingLimbAgainstPoorDetail() {
        List<Limb> limbs = List.of(Limb.alone(0.03), new Limb(0.03, 0, 0, List.of(), true));
        Fusion.Fused fused = Fusion.of(limbs, List.of(detail(0, 1, new Shift(2, 0, 0.2, 0.2))), 0);
        assertEquals(List.of(true), fused.linksLeftOut());
        assertEquals(List.of(false, false), fused.limbsLeftOut());
    }

    /**
     * Detail of red and of blue puts the limb of green, the reference, off by one vector. By Baarda's test green's limb has
     * the contradiction e sqrt(2 / (3 L + T)) with limb variances L and link variances T, a link e sqrt((L + T) / ((3 L + T)
     * (2 L + T))), about half of it: two outvote one, and it does not matter what the fits left.
     */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void twoLinksOutvoteTheLimbOfTheReference(boolean misfits) {
        Limb limb = new Limb(0.05, 0, 0, List.of(), misfits);
        Shift off = new Shift(0.5, -0.4, 0.03, 0.03);
        Fusion.Fused fused = Fusion.of(List.of(limb, limb, limb), List.of(detail(0, 1, off), detail(0, 2, off)), 0);
        assertEquals(List.of(true, false, false), fused.limbsLeftOut());
        assertEquals(List.of(false, false), fused.linksLeftOut());
        assertEquals(-0.5, fused.corrections().get(0).x(), 1e-6);
        assertEquals(0.4, fused.corrections().get(0).y(), 1e-6);
        assertEquals(0, fused.corrections().get(1).x(), 1e-6);
    }

    /**
     * Two limbs that one cause moves down by 3 and by -1 times its error, one exact link that wants them 4 apart: the cause must
     * be what errs, by one standard error less what limbs take up. By hand: the difference of the limbs has the variance
     * 0.1 + 0.1 + 16, of which the cause has 16, so c = 4 * 4 / 16.2, and the first limb's correction is 3 c and its part of
     * what is left, 0.1 * 4 / 16.2.
     */
    @Test
    void findsACauseThatLimbsShare() {
        double own = Math.sqrt(0.1);
        List<Limb> limbs = List.of(shared(own, 0, 0, 3), shared(own, 0, 0, -1));
        Fusion.Fused fused = Fusion.of(limbs, List.of(detail(1, 0, new Shift(0, 4, 1e-4, 1e-4))), 1);
        double cause = 16 / 16.2;
        double left = 0.4 / 16.2;
        assertEquals(3 * cause + left, fused.corrections().get(0).y(), 1e-6);
        assertEquals(-cause - left, fused.corrections().get(1).y(), 1e-6);
        assertEquals(1e-4, fused.places().get(0).sigmaY(), 1e-6);
        // Across, nothing is shared.
        assertEquals(Math.sqrt(0.05), fused.corrections().get(0).sigmaX(), 1e-6);
    }

    /**
     * A frame whose time is unsure by 0.4 px to the right: detail says so there, and the limb downward. By hand: weights 1 / (0.01 +
     * 0.16) and 1 / 0.04 to the right, 1 / 0.01 and 1 / 0.04 downward, against a reference that is held.
     */
    @Test
    void anErrorOfItsOwnCountsAlongItsDirection() {
        List<Limb> limbs = List.of(Limb.alone(0), new Limb(0.1, 0.4, 0, List.of(), false));
        Fusion.Fused fused = Fusion.of(limbs, List.of(detail(0, 1, new Shift(0.05, 0.05, 0.2, 0.2))), 0);
        double right = 1 / 0.04 / (1 / 0.17 + 1 / 0.04);
        double down = 1 / 0.04 / (1 / 0.01 + 1 / 0.04);
        assertEquals(0.05 * right, fused.corrections().get(1).x(), 1e-6);
        assertEquals(0.05 * down, fused.corrections().get(1).y(), 1e-6);
        assertEquals(
                1 / Math.sqrt(1 / 0.17 + 1 / 0.04), fused.corrections().get(1).sigmaX(), 1e-6);
    }

    /**
     * Limbs that state 0.02 px against detail that is as sure and says 0.16 px (below what {@link Fusion} takes for a blunder): by the
     * stated errors the frames would move by 0.13 px. With a factor f the limbs' difference has the variance 8e-4 f^2, and f^2 is
     * (q + 2) / (r + 2), where each limb's correction is half of 0.16 k for k = 8e-4 f^2 / (8e-4 f^2 + 2e-4), q = 2 (0.08 k / 0.02)^2
     * and r = 2 k: by iteration, f^2 = 8.15 and k = 0.970. The bound is half of the last digit of k.
     */
    @Test
    void widensLimbsThatDetailContradicts() {
        double sure = Math.sqrt(2e-4);
        Fusion.Fused fused = Fusion.of(
                List.of(Limb.alone(0.02), Limb.alone(0.02)), List.of(detail(0, 1, new Shift(0.16, 0, sure, sure))), 0);
        double moved =
                fused.corrections().get(1).x() - fused.corrections().get(0).x();
        assertEquals(0.970 * 0.16, moved, 0.0005 * 0.16);
    }

    /** Without links a frame's place against the reference is as unsure as both limbs, and as the cause they feel unlike. */
    @Test
    void saysHowSureAPlaceIs() {
        List<Limb> limbs = List.of(shared(0.3, 0, 0.5, 0), shared(0.4, 0, -0.7, 0), shared(0.4, 1, -0.7, 0));
        Fusion.Fused fused = Fusion.of(limbs, List.of(), 0);
        assertShift(new Shift(0, 0, Math.hypot(0.5, 1.2), 0.5), fused.places().get(1));
        assertShift(
                new Shift(0, 0, Math.sqrt(0.25 + 0.25 + 0.49), 0.5),
                fused.places().get(2));
        assertShift(new Shift(0, 0, 0, 0), fused.places().get(0));
    }

    /**
     * Limbs with two shared causes, of which one moves both alike: their difference knows nothing of that one, while each alone is
     * as unsure as all its causes together.
     */
    @Test
    void aCauseThatMovesAllLimbsAlikeLeavesTheirDifference() {
        List<SharedError> first = List.of(
                new SharedError(SharedError.Kind.SIZE, 0, 2, 1), new SharedError(SharedError.Kind.NORTH, 1, 0.4, 0));
        List<SharedError> second = List.of(
                new SharedError(SharedError.Kind.SIZE, 0, 2, 1), new SharedError(SharedError.Kind.NORTH, 1, -0.2, 0));
        Fusion.Fused fused =
                Fusion.of(List.of(new Limb(0.3, 0, 0, first, false), new Limb(0.4, 0, 0, second, false)), List.of(), 0);
        assertShift(new Shift(0, 0, Math.sqrt(0.25 + 0.36), 0.5), fused.places().get(1));
        assertEquals(Math.sqrt(0.09 + 4 + 0.16), fused.corrections().get(0).sigmaX(), ROUNDING);
        assertEquals(Math.sqrt(0.16 + 1), fused.corrections().get(1).sigmaY(), ROUNDING);
    }

    /** Errors as large as stated are no blunders: of 2000 draws hardly one is left out. */
    @Test
    void keepsWhatIsOnlyUnsure() {
        Random random = new Random(4);
        int dropped = 0;
        for (int trial = 0; trial < 2000; trial++) {
            double[] e = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
            List<Link> links = new ArrayList<>();
            for (int to = 1; to < 3; to++) {
                links.add(detail(0, to, new Shift(0.2 * (e[0] - e[to]) + 0.1 * random.nextGaussian(), 0, 0.1, 0.1)));
            }
            Fusion.Fused fused = fused(List.of(0.2, 0.2, 0.2), links);
            dropped +=
                    fused.linksLeftOut().contains(true) || fused.limbsLeftOut().contains(true) ? 1 : 0;
        }
        assertEquals(0, dropped, 1);
    }

    private static List<Shift> corrections(List<Double> limb, List<Link> links) {
        return fused(limb, links).corrections();
    }

    private static Fusion.Fused fused(List<Double> limb, List<Link> links) {
        return Fusion.of(limb.stream().map(Limb::alone).toList(), links, 0);
    }

    private static Limb shared(double sigmaPx, int cause, double x, double y) {
        return new Limb(sigmaPx, 0, 0, List.of(new SharedError(SharedError.Kind.NORTH, cause, x, y)), false);
    }

    private static Link detail(int from, int to, Shift shift) {
        return new Link(from, to, shift, Witness.DETAIL);
    }

    private static void assertShift(Shift expected, Shift found) {
        assertEquals(expected.x(), found.x(), ROUNDING);
        assertEquals(expected.y(), found.y(), ROUNDING);
        assertEquals(expected.sigmaX(), found.sigmaX(), ROUNDING);
        assertEquals(expected.sigmaY(), found.sigmaY(), ROUNDING);
    }
}
