package org.epochrome.session.diagnose;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.epochrome.session.recipe.Mirroring;
import org.epochrome.session.recipe.Recipe;

/**
 * An orientation and order of all frames, and which of them agree in it.
 *
 * @param orientation how they lie
 * @param table how their detail lies
 * @param eastDeg where it lies by their times
 * @param group those that agree
 * @param suspects those that do not, although their detail is found in others
 * @param cost what has to be wrong for it, in wrong statements
 */
record MotionHypothesis(
        Orientation orientation,
        MotionTable table,
        List<Double> eastDeg,
        List<Integer> group,
        List<Integer> suspects,
        double cost) {
    /** Belts that follow latitudes in one orientation leave so many times less than upside down. */
    private static final double CLEAR_BELTS = 1.06;

    private static final double AGAINST_BELTS = 2.5;
    private static final double AGAINST_STATEMENT = 1;
    private static final double MIRRORED = 0.6;
    private static final double AGAINST_LIGHT = 1;
    private static final double CLEAR_PHASE_DEG = 5;
    private static final double CLEAR_SHADOW_DEG = 1.5;
    private static final double REVERSED = 0.9;
    private static final double NOT_FOUND = 0.25;
    private static final double LESS_AGREEMENT = 2;

    /**
     * All orientations, the one with the least wrong first.
     *
     * @param byTime where the detail of each frame lies by its time, degrees east
     */
    static List<MotionHypothesis> ranked(Recipe recipe, List<FrameDetail> frames, double[] byTime) {
        Map<List<Object>, MotionTable> tables = new HashMap<>();
        List<MotionHypothesis> all = new ArrayList<>();
        double best = 0;
        for (Orientation o : Orientation.all()) {
            MotionTable table = tables.computeIfAbsent(
                    List.of(o.turnedDeg(), o.reflected()),
                    k -> new MotionTable(frames.stream().map(o::map).toList()));
            best = Math.max(best, table.score(o.eastDeg(byTime)));
        }
        for (Orientation o : Orientation.all()) {
            MotionTable table = tables.get(List.<Object>of(o.turnedDeg(), o.reflected()));
            MotionTable over = tables.get(List.<Object>of(o.turnedDeg() == 0 ? 180.0 : 0.0, o.reflected()));
            double[] east = o.eastDeg(byTime);
            List<Integer> group = table.group(east);
            List<Integer> suspects = new ArrayList<>();
            double cost = stated(recipe, o, frames.get(0).mirrored() != o.reflected(), frames);
            for (int i = 0; i < frames.size(); i++) {
                int frame = i;
                if (!group.contains(i)) {
                    boolean found = group.stream().anyMatch(k -> table.found(frame, k));
                    suspects.add(i);
                    cost += found ? 1 : NOT_FOUND;
                }
            }
            if (recipe.body().belted() && unevenness(table) > CLEAR_BELTS * unevenness(over)) {
                cost += AGAINST_BELTS;
            }
            cost += best > 0 ? LESS_AGREEMENT * (1 - table.score(east) / best) : 0;
            all.add(new MotionHypothesis(o, table, Arrays.stream(east).boxed().toList(), group, suspects, cost));
        }
        all.sort(Comparator.comparingDouble(MotionHypothesis::cost));
        return all;
    }

    private static double stated(Recipe recipe, Orientation o, boolean mirrored, List<FrameDetail> frames) {
        double cost = o.reversed() ? REVERSED : 0;
        if (o.turnedDeg() != 0 && recipe.setup().northDeg().isPresent()) {
            cost += AGAINST_STATEMENT;
        }
        Mirroring stated = recipe.setup().mirroring();
        if (stated == Mirroring.AUTO) {
            boolean againstLight = o.reflected() && lightShowsSense(recipe, frames);
            return cost + (mirrored ? MIRRORED : 0) + (againstLight ? AGAINST_LIGHT : 0);
        }
        return mirrored == (stated == Mirroring.YES) ? cost : cost + AGAINST_STATEMENT;
    }

    /** Whether the lit side, or the globe's shadow on rings, has told already whether frames are mirrored. */
    private static boolean lightShowsSense(Recipe recipe, List<FrameDetail> frames) {
        double phaseDeg = Math.toDegrees(Math.acos(frames.get(0).cosPhase()));
        return recipe.body().rings().isPresent()
                ? phaseDeg > CLEAR_SHADOW_DEG
                : phaseDeg > CLEAR_PHASE_DEG && recipe.setup().northDeg().isPresent();
    }

    private static double unevenness(MotionTable table) {
        double sum = 0;
        for (int i = 0; i < table.size(); i++) {
            sum += table.map(i).unevenness();
        }
        return sum;
    }
}
