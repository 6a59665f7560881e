package org.epochrome.session.diagnose;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.epochrome.disk.Disk;

/**
 * How all frames lie against what was assumed, and in which order they were taken.
 *
 * @param turnedDeg angle by which north lies elsewhere
 * @param reflected whether they are mirrored if they were assumed not to be, or the other way round
 * @param reversed whether their times run backwards
 */
record Orientation(double turnedDeg, boolean reflected, boolean reversed) {
    static final Orientation AS_ASSUMED = new Orientation(0, false, false);

    /** All that differ by half turns, reflections and the order of times. */
    static List<Orientation> all() {
        List<Orientation> all = new ArrayList<>();
        for (boolean reversed : new boolean[] {false, true}) {
            for (boolean reflected : new boolean[] {false, true}) {
                all.add(new Orientation(0, reflected, reversed));
                all.add(new Orientation(180, reflected, reversed));
            }
        }
        return all;
    }

    /** The map of a frame in this orientation. */
    DetailMap map(FrameDetail frame) {
        return frame.map(Disk.wrapDeg(frame.northDeg() + turnedDeg), frame.mirrored() != reflected);
    }

    /** Where detail lies by the times, taken in this order. */
    double[] eastDeg(double[] byTime) {
        if (!reversed) {
            return byTime.clone();
        }
        double[] sorted = byTime.clone();
        Arrays.sort(sorted);
        double[] east = new double[byTime.length];
        for (int i = 0; i < east.length; i++) {
            int rank = Arrays.binarySearch(sorted, byTime[i]);
            east[i] = sorted[east.length - 1 - rank];
        }
        return east;
    }
}
