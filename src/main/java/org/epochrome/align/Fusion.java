package org.epochrome.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Weighs what the witnesses say about where the disks lie. The limb knows every frame's disk on its own; detail and physics
 * know how frames lie against each other, mostly better. The corrections {@code e} to the limb's centres minimise
 * {@code sum ((e_i - c f_i) / s_i)^2 + sum ((e_to - e_from - d) / t)^2 + c^2}, with s the limb's and t the others' standard
 * errors, d their shifts, and c what errs in all limbs of one cause, in standard errors, which moves each by its f (one such
 * term for every cause); errors need not lie along the axes.
 *
 * <p>A statement that contradicts the rest by far is left out, the worst first (Baarda 1968, "A testing procedure for use in
 * geodetic networks": each residual over its own standard error). Where two statements contradict each other and no third
 * can tell who errs, the link goes: the limb is fitted to a model that it must resemble, detail may be mistaken for other detail.
 * A limb that does not resemble its model goes instead, if the detail that contradicts it is well measured.
 */
public final class Fusion {
    /** Standard errors beyond which a statement is wrong rather than unsure. */
    private static final double CONTRADICTS = 5;
    /** For this test no statement is taken to be surer: below, witnesses differ because no model is perfect. */
    private static final double LEAST_TESTED_PX = 0.05;
    /** Fraction of the largest contradiction from which a statement is as suspect as the worst one. */
    private static final double AS_BAD = 0.9;
    /** So many coordinates count as if limbs had erred in them by what they state. */
    private static final double STATED = 2;

    /** Mean squares of corrections, in stated variances, up to which they are taken for chance. */
    private static final double CHANCE = 4;

    private static final int ROUNDS = 10;

    private Fusion() {}

    /**
     * What came out.
     *
     * @param corrections to the centres found by the limb, with their standard errors
     * @param places the same against the reference's correction: how sure frames lie on each other
     * @param limbsLeftOut whether a frame's limb was left out
     * @param linksLeftOut whether a link was left out; unknown shifts are not
     */
    public record Fused(
            List<Shift> corrections, List<Shift> places, List<Boolean> limbsLeftOut, List<Boolean> linksLeftOut) {}

    /**
     * Weighs the statements.
     *
     * @param limbs what the limb says of each frame
     * @param links what the other witnesses say; unknown shifts do not count
     * @param reference number of the frame that the others are aligned to
     */
    public static Fused of(List<Limb> limbs, List<Link> links, int reference) {
        int n = limbs.size();
        int causes = 1
                + limbs.stream()
                        .flatMap(limb -> limb.shared().stream())
                        .mapToInt(SharedError::cause)
                        .max()
                        .orElse(-1);
        List<Statement> all = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            all.add(Statement.of(limbs.get(i), i, n));
        }
        links.forEach(link -> all.add(Statement.of(link)));
        boolean[] out = new boolean[all.size()];
        for (int i = 0; i < out.length; i++) {
            out[i] = !all.get(i).shift().known();
        }
        boolean[] unknown = out.clone();
        ShiftNetwork.Size size = new ShiftNetwork.Size(n, causes);
        for (Optional<Integer> worst = worst(size, all, out); worst.isPresent(); worst = worst(size, all, out)) {
            out[worst.get()] = true;
        }
        widenLimbs(size, all, out);
        ShiftNetwork network = new ShiftNetwork(size, all, out, 0);
        List<Shift> corrections = new ArrayList<>();
        List<Shift> places = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            corrections.add(network.correction(i));
            places.add(network.place(i, reference));
        }
        List<Boolean> left = new ArrayList<>();
        for (int i = 0; i < out.length; i++) {
            left.add(out[i] && !unknown[i]);
        }
        return new Fused(
                corrections, places, List.copyOf(left.subList(0, n)), List.copyOf(left.subList(n, left.size())));
    }

    /**
     * Limbs err by more than they state where the disk is not quite what its model supposes: by how much, detail tells. All limbs get
     * one factor, such that what they are corrected by is about as large as they then state: the estimate of a variance component of
     * Foerstner 1979 (Vermessungswesen und Raumordnung 41, 433), with {@link #STATED} to hold it near 1.
     */
    private static void widenLimbs(ShiftNetwork.Size size, List<Statement> all, boolean[] out) {
        List<Integer> limbs = IntStream.range(0, all.size())
                .filter(k -> all.get(k).limb() >= 0 && !out[k] && !all.get(k).held())
                .boxed()
                .toList();
        List<Statement> stated = List.copyOf(all);
        double factor = 1;
        for (int round = 0; round < ROUNDS && !limbs.isEmpty(); round++) {
            ShiftNetwork network = new ShiftNetwork(size, all, out, 0);
            double corrected = STATED;
            double free = STATED;
            for (int k : limbs) {
                corrected += network.corrected(all.get(k), stated.get(k));
                free += network.free(all.get(k));
            }
            if (round == 0 && corrected < CHANCE * free) {
                return;
            }
            factor = Math.max(1, Math.sqrt(corrected / free));
            for (int k : limbs) {
                all.set(k, stated.get(k).widened(factor));
            }
        }
    }

    /** The statement to leave out next; empty if all agree. */
    private static Optional<Integer> worst(ShiftNetwork.Size size, List<Statement> all, boolean[] out) {
        double[] contradictions = new ShiftNetwork(size, all, out, LEAST_TESTED_PX).contradictions();
        double most = Arrays.stream(contradictions).max().orElse(0);
        if (most < CONTRADICTS) {
            return Optional.empty();
        }
        List<Integer> suspects = new ArrayList<>();
        for (int i = 0; i < contradictions.length; i++) {
            if (contradictions[i] > AS_BAD * most) {
                suspects.add(i);
            }
        }
        Optional<Integer> misfit = suspects.stream()
                .filter(i -> all.get(i).misfits()
                        && suspects.stream().anyMatch(k -> all.get(k).outvotes(all.get(i))))
                .max(Comparator.comparing(i -> contradictions[i]));
        if (misfit.isPresent()) {
            return misfit;
        }
        return suspects.stream()
                .max(Comparator.comparing((Integer i) -> all.get(i).witness() == Witness.DETAIL ? 1 : 0)
                        .thenComparing(i -> contradictions[i]));
    }
}
