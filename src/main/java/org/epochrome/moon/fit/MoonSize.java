package org.epochrome.moon.fit;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.epochrome.moon.MoonOrShadow;
import org.epochrome.moon.SpotFit;

/** The size of a companion that no ephemeris predicts. */
public final class MoonSize {
    /** Radii that are tried to size one: the smallest, each against the one before, and how many; up to Triton's and some more. */
    private static final double SMALLEST = 0.004;

    private static final double SIZE_STEP = 1.12;
    private static final int SIZES = 27;
    /** How much light below zero counts against a radius. */
    private static final double BLACKER = 1000;

    private MoonSize() {}

    /** The radius that leaves least in all frames of a track. */
    public static MoonOrShadow sized(MoonOrShadow companion, List<MoonField> track) {
        double[] left = IntStream.range(0, SIZES)
                .mapToDouble(k -> left(companion.sized(size(k)), track))
                .toArray();
        int best = IntStream.range(1, SIZES - 1)
                .boxed()
                .min(Comparator.comparingDouble(k -> left[k]))
                .orElseThrow();
        double slope = 0.5 * (left[best + 1] - left[best - 1]);
        double bend = left[best + 1] - 2 * left[best] + left[best - 1];
        double between = bend > 0 ? Math.max(-1, Math.min(1, -slope / bend)) : 0;
        return companion.sized(size(best + between));
    }

    private static double size(double step) {
        return SMALLEST * Math.pow(SIZE_STEP, step);
    }

    /** What a companion of a size leaves unexplained, as a logarithm. */
    private static double left(MoonOrShadow companion, List<MoonField> track) {
        double left = 0;
        for (MoonField field : track) {
            SpotFit fit = new MoonFit(field, companion, 0).held();
            // nothing is darker than black: a disk too small for its darkness
            left += fit.level() < 0 ? BLACKER * fit.level() * fit.level() : 0;
            left += Math.log(1 - Math.min(fit.explained(), 0.99999));
        }
        return left;
    }
}
