package org.epochrome.session.diagnose;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.epochrome.disk.Disk;

/** What would make a frame agree with those that agree with each other. */
final class SuspectFrame {
    private static final double STEP_DEG = 5;
    private static final double FINE_DEG = 1;
    private static final double WITHIN_DEG = 0.6;
    private static final double SMALL_DEG = 12;
    /** A smaller turn is none. */
    private static final double LEAST_TURN_DEG = 2;
    /** Parts of an agreement that count: wrong times are common, other orientations rare, both at once unlikely. */
    private static final double TURNED = 0.85;

    private static final double REFLECTED = 0.8;
    private static final double BOTH = 0.6;

    private final MotionHypothesis all;
    private final FrameDetail frame;
    private final int index;

    SuspectFrame(MotionHypothesis all, FrameDetail frame, int index) {
        this.all = all;
        this.frame = frame;
        this.index = index;
    }

    /**
     * A change that may explain a frame.
     *
     * @param turnedDeg angle by which its north lies elsewhere than the others say
     * @param reflected whether it is mirrored relative to them
     * @param offDeg by how much its detail lies east of where its time puts it
     * @param agreement with the others
     * @param weight part of it that counts
     */
    record Change(double turnedDeg, boolean reflected, double offDeg, double agreement, double weight) {
        boolean inTime() {
            return offDeg != 0;
        }
    }

    /** The changes that explain it, the best first; none if nothing does. */
    List<Change> changes() {
        List<Change> tried = new ArrayList<>();
        for (boolean reflected : new boolean[] {false, true}) {
            BestAngle best = BestAngle.search(STEP_DEG, turned -> atItsTime(turned, reflected));
            if (reflected || Math.abs(best.deg()) > LEAST_TURN_DEG) {
                tried.add(new Change(best.deg(), reflected, 0, best.agreement(), reflected ? REFLECTED : TURNED));
            }
            for (double turned : new double[] {0, 180}) {
                MotionCurve.Peak peak = sum(turned, reflected).peak();
                double weight = reflected || turned != 0 ? BOTH : 1;
                tried.add(new Change(
                        turned,
                        reflected,
                        Disk.wrapDeg(peak.deg() + first() - all.eastDeg().get(index)),
                        score(peak),
                        weight));
            }
        }
        return tried.stream()
                .filter(c -> c.agreement > MotionTable.FOUND)
                .sorted(Comparator.comparingDouble((Change c) -> -c.weight * c.agreement))
                .toList();
    }

    /**
     * A small turn of a frame.
     *
     * @param deg by which its north lies elsewhere
     * @param gain how many times better it agrees with the others then
     */
    record Turn(double deg, double gain) {}

    /** The small turn with which the frame agrees best. */
    Turn turn() {
        double here = Math.max(MotionTable.FOUND, atItsTime(0, false));
        Turn best = new Turn(0, 1);
        for (double deg = -SMALL_DEG; deg <= SMALL_DEG; deg += FINE_DEG) {
            double gain = atItsTime(deg, false) / here;
            best = gain > best.gain ? new Turn(deg, gain) : best;
        }
        return best;
    }

    private double score(MotionCurve.Peak peak) {
        return peak.score() / all.group().size();
    }

    private DetailMap map(double turned, boolean reflected) {
        return frame.map(
                Disk.wrapDeg(frame.northDeg() + all.orientation().turnedDeg() + turned),
                (frame.mirrored() != all.orientation().reflected()) != reflected);
    }

    /** Where the detail of the first of the others lies. */
    private double first() {
        return all.eastDeg().get(all.group().get(0));
    }

    /** Agreement with all others by how far its detail lies east of that of the first of them. */
    private MotionCurve sum(double turned, boolean reflected) {
        DetailMap own = map(turned, reflected);
        List<MotionCurve> curves = all.group().stream()
                .map(k -> MotionCurve.of(own, all.table().map(k)))
                .toList();
        double[] offsets = all.group().stream()
                .mapToDouble(k -> Disk.wrapDeg(first() - all.eastDeg().get(k)))
                .toArray();
        return MotionCurve.sum(curves, offsets);
    }

    private double atItsTime(double turned, boolean reflected) {
        DetailMap own = map(turned, reflected);
        double sum = 0;
        int others = 0;
        for (int k : all.group()) {
            if (k != index) {
                double deg =
                        Disk.wrapDeg(all.eastDeg().get(index) - all.eastDeg().get(k));
                sum += MotionCurve.at(
                        own, all.table().map(k), deg, WITHIN_DEG, all.table().curve(index, k));
                others++;
            }
        }
        return sum / others;
    }
}
