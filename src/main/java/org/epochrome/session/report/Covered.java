package org.epochrome.session.report;

import java.util.DoubleSummaryStatistics;
import org.epochrome.colour.merge.Coverage;
import org.epochrome.disk.Disk;
import org.epochrome.image.Plane;

/**
 * How many frames cover a pixel of the inner disk.
 *
 * @param leastFrames at least
 * @param mostFrames at most
 * @param meanFrames in the mean
 */
public record Covered(double leastFrames, double mostFrames, double meanFrames) {
    /** Part of the radius that counts as the inner disk. */
    private static final double INNER = 0.85;

    /** How a band's coverage is on a disk. */
    public static Covered of(Coverage coverage, Disk disk) {
        double reach = INNER * disk.equatorialRadiusPx();
        Plane frames = coverage.frames();
        DoubleSummaryStatistics counts = new DoubleSummaryStatistics();
        for (int y = 0; y < frames.height(); y++) {
            for (int x = 0; x < frames.width(); x++) {
                if (Math.hypot(x - disk.x(), y - disk.y()) < reach) {
                    counts.accept(frames.at(x, y));
                }
            }
        }
        return new Covered(counts.getMin(), counts.getMax(), counts.getAverage());
    }
}
