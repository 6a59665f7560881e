package org.epochrome.demo.scene;

/**
 * The angle of a direction, several times as quick as {@link StrictMath#atan2} and as good to 5e-16 radians, in plain arithmetic, so
 * that every platform has the same bits.
 *
 * <p>The tangent's nearest table entry is taken off by the addition theorem; the series of what is left is short.
 */
public final class Angle {
    private static final int STEPS = 128;
    private static final double[] ARC = new double[STEPS + 1];

    static {
        for (int i = 0; i <= STEPS; i++) {
            ARC[i] = StrictMath.atan((double) i / STEPS);
        }
    }

    private Angle() {}

    /** Radians from the x axis towards the y axis, -pi to pi; 0 for no direction. */
    public static double of(double y, double x) {
        double across = Math.abs(y);
        double along = Math.abs(x);
        double angle = across <= along ? acute(across, along) : 0.5 * Math.PI - acute(along, across);
        if (x < 0) {
            angle = Math.PI - angle;
        }
        return y < 0 ? -angle : angle;
    }

    /** Of a direction that rises by no more than it goes along. */
    private static double acute(double rise, double run) {
        if (run == 0) {
            return 0;
        }
        int i = (int) (rise / run * STEPS + 0.5);
        double tangent = (double) i / STEPS;
        double r = (rise - tangent * run) / (run + tangent * rise);
        double square = r * r;
        return ARC[i] + r * (1 - square * (1.0 / 3 - square * (0.2 - square / 7)));
    }
}
