package org.epochrome.disk.fit;

import org.epochrome.disk.model.Samples;
import org.epochrome.disk.model.Unknowns;
import org.epochrome.disk.solve.Skyline;

/**
 * Steps of the shape parameters that the fits of plain and of ringed globes share: what is expected of the limb darkening,
 * and how far a step may go.
 *
 * @param mostMove part of the radius by which place and size may move at once
 * @param leastBlur least blur, sample pixels
 * @param mostBlurRatio factor by which the blur may change at once
 */
record ShapeStep(double mostMove, double leastBlur, double mostBlurRatio) {
    /** Scatter of sky and wings (common practice, no source). */
    private static final double SKY_SCATTER = 0.5;

    /**
     * That scatter where the sky was cut off, and for its slope: only the foot of the limb shows it there, and what the model lacks at the
     * limb would go into it. Found on rendered scenes.
     */
    private static final double CUT_SKY_SCATTER = 0.003;

    private static final double CUT_SLOPE_SCATTER = 0.0003;

    private static final double WINGS_SCATTER = 0.15;
    private static final double MOST_TURN = 0.1;
    private static final double MOST_MINNAERT_MOVE = 0.15;
    private static final double MOST_WIDTH_MOVE = 0.15;
    private static final double MOST_TILT_MOVE = 0.5;
    private static final double MOST_WIDENING = 0.7;
    private static final double MOST_TILT = 2;
    private static final double MOST_LIFT = 0.01;
    private static final double LEAST_MINNAERT = 0.2;
    private static final double MOST_MINNAERT = 1.3;

    /** Adds that wings and slopes of the sky are small unless the frame says so. */
    static void expectLittle(Skyline normals, int first, double[] shape, Samples samples) {
        for (int i = Unknowns.SKY; i < Unknowns.SHAPE; i++) {
            double scatter = i < Unknowns.WINGS
                    ? skyScatter(i, samples)
                    : WINGS_SCATTER * samples.surroundings().looseness(i - Unknowns.WINGS, samples.diskNoise());
            double trust = 1 / (scatter * scatter);
            normals.add(first + i, first + i, trust);
            normals.addRight(first + i, -trust * shape[i]);
        }
    }

    private static double skyScatter(int parameter, Samples samples) {
        if (samples.cut().isEmpty()) {
            return SKY_SCATTER;
        }
        return parameter == Unknowns.SKY ? CUT_SKY_SCATTER : CUT_SLOPE_SCATTER;
    }

    /** Part of a step that moves no parameter too far: parameters belong together and are not cut one by one. */
    double allowed(double[] move, double[] shape) {
        int first = move.length - Unknowns.SHAPE;
        double most = mostMove * shape[Unknowns.RADIUS];
        double ratio = 1;
        for (int i = Unknowns.X; i <= Unknowns.RADIUS; i++) {
            ratio = Math.max(ratio, Math.abs(move[first + i]) / most);
        }
        ratio = Math.max(ratio, Math.abs(move[first + Unknowns.NORTH]) / MOST_TURN);
        ratio = Math.max(ratio, Math.abs(move[first + Unknowns.POLES]) / MOST_LIFT);
        ratio = Math.max(ratio, Math.abs(move[first + Unknowns.MINNAERT]) / MOST_MINNAERT_MOVE);
        ratio = Math.max(ratio, Math.abs(move[first + Unknowns.SMEAR_WIDTH]) / MOST_WIDTH_MOVE);
        ratio = Math.max(ratio, Math.abs(move[first + Unknowns.SMEAR_TILT]) / MOST_TILT_MOVE);
        return 1 / ratio;
    }

    /** The shape after a part of a step, held where it has a meaning. */
    double[] after(double[] shape, double[] move, double part) {
        int first = move.length - Unknowns.SHAPE;
        double[] q = shape.clone();
        for (int i = 0; i < q.length; i++) {
            q[i] += part * move[first + i];
        }
        q[Unknowns.MINNAERT] = clamp(q[Unknowns.MINNAERT], LEAST_MINNAERT, MOST_MINNAERT);
        q[Unknowns.SMEAR_WIDTH] = clamp(q[Unknowns.SMEAR_WIDTH], -MOST_WIDENING, MOST_WIDENING);
        q[Unknowns.POLES] = clamp(q[Unknowns.POLES], -MOST_LIFT, MOST_LIFT);
        q[Unknowns.SMEAR_TILT] = clamp(q[Unknowns.SMEAR_TILT], -MOST_TILT, MOST_TILT);
        q[Unknowns.BLUR] = clamp(
                q[Unknowns.BLUR],
                Math.max(leastBlur, shape[Unknowns.BLUR] / mostBlurRatio),
                shape[Unknowns.BLUR] * mostBlurRatio);
        return q;
    }

    static double clamp(double v, double least, double most) {
        return Math.max(least, Math.min(most, v));
    }
}
