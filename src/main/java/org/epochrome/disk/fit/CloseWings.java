package org.epochrome.disk.fit;

import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.epochrome.disk.model.Surroundings;
import org.epochrome.disk.model.Unknowns;
import org.epochrome.disk.solve.Skyline;

/**
 * The wings next to the core of a blur, which a fit first leaves out: they hardly differ from a wider core, so that they are
 * fitted only if a frame shows them.
 */
final class CloseWings {
    /**
     * Part of the weighted squares that wings must explain to be fitted: with Gaussian blurs they explain up to 0.04, with
     * diffraction 0.08 to 0.36 (rendered scenes).
     */
    private static final double SHOWN = 0.05;

    private final int[] parameters;

    private CloseWings(int[] parameters) {
        this.parameters = parameters;
    }

    /** The close wings among the free shape parameters of a fit. */
    static CloseWings of(Surroundings surroundings, boolean[] held) {
        return new CloseWings(IntStream.range(0, Surroundings.WINGS)
                .filter(wing -> surroundings.isClose(wing) && !held[Unknowns.WINGS + wing])
                .map(wing -> Unknowns.WINGS + wing)
                .toArray());
    }

    boolean isEmpty() {
        return parameters.length == 0;
    }

    /** Sets for each close wing whether a fit holds it. */
    void hold(boolean[] held, boolean on) {
        for (int p : parameters) {
            held[p] = on;
        }
    }

    /**
     * Whether a frame shows the wings (Wald 1943, Trans. Am. Math. Soc. 54, 426).
     *
     * @param solved equations that were solved with all wings free, shape parameters last
     * @param move their solution, from wings that are zero
     * @param squares weighted sum of squares without wings
     */
    boolean show(Skyline solved, double[] move, double squares) {
        double[][] covariance = solved.lastCovariance(Unknowns.SHAPE);
        int first = move.length - Unknowns.SHAPE;
        RealVector wings = new ArrayRealVector(parameters.length);
        Array2DRowRealMatrix ofWings = new Array2DRowRealMatrix(parameters.length, parameters.length);
        for (int i = 0; i < parameters.length; i++) {
            wings.setEntry(i, move[first + parameters[i]]);
            for (int k = 0; k < parameters.length; k++) {
                ofWings.setEntry(i, k, covariance[parameters[i]][parameters[k]]);
            }
        }
        double explained =
                wings.dotProduct(new LUDecomposition(ofWings).getSolver().solve(wings));
        return explained > SHOWN * squares;
    }
}
