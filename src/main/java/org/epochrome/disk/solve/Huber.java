package org.epochrome.disk.solve;

/** Outliers held down: residuals beyond some standard deviations count less (Huber 1964, Ann. Math. Stat. 35, 73). */
public final class Huber {
    private static final double SIGMAS = 3;

    private Huber() {}

    /** Weight of a residual of an expected variance. */
    public static double weight(double residual, double variance) {
        double sigmas = Math.abs(residual) / Math.sqrt(variance);
        return (sigmas > SIGMAS ? SIGMAS / sigmas : 1) / variance;
    }
}
