package org.epochrome.session.diagnose;

import java.util.List;
import java.util.Optional;
import org.epochrome.disk.Disk;

/** The direction of the axis in which detail of all frames moves as it should, where that of the session is far off. */
final class AxisSearch {
    private static final double STEP_DEG = 6;
    private static final double WITHIN_DEG = 0.6;
    /** The best direction must agree so many times better than the assumed one. */
    private static final double CLEAR = 1.5;

    private final List<FrameDetail> frames;
    private final double[] eastDeg;

    AxisSearch(List<FrameDetail> frames, double[] eastDeg) {
        this.frames = frames;
        this.eastDeg = eastDeg;
    }

    /** By how much north lies elsewhere, degrees; empty if no direction is clearly better. */
    Optional<Double> turnedDeg(MotionTable like) {
        BestAngle best = BestAngle.search(STEP_DEG, turned -> agreement(turned, like));
        return best.agreement() > MotionTable.FOUND && best.agreement() > CLEAR * agreement(0, like)
                ? Optional.of(Disk.wrapDeg(best.deg()))
                : Optional.empty();
    }

    private double agreement(double turned, MotionTable like) {
        List<DetailMap> maps = frames.stream()
                .map(f -> f.map(f.northDeg() + turned, f.mirrored()))
                .toList();
        double sum = 0;
        int pairs = 0;
        for (int i = 0; i < maps.size(); i++) {
            for (int k = 0; k < i; k++) {
                sum += MotionCurve.at(
                        maps.get(i), maps.get(k), Disk.wrapDeg(eastDeg[i] - eastDeg[k]), WITHIN_DEG, like.curve(i, k));
                pairs++;
            }
        }
        return sum / pairs;
    }
}
