package org.epochrome.session.diagnose;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.Disk;

/** How the detail of each frame lies against that of each other, in one orientation of all frames. */
final class MotionTable {
    /** Agreement from which detail was found, standard deviations of chance over two hundred angles. */
    static final double FOUND = 6.5;
    /** Part of the best agreement that an angle must reach to agree too. */
    private static final double AS_GOOD = 0.7;
    /** How far the best angle may lie from the right one: degrees, and as a part of the angle, which rests of shading shorten. */
    private static final double TOLERANCE_DEG = 0.5;

    private static final double TOLERANCE_PART = 0.2;

    private final List<DetailMap> maps;
    private final MotionCurve[][] curves;

    MotionTable(List<DetailMap> maps) {
        this.maps = maps;
        curves = new MotionCurve[maps.size()][maps.size()];
        for (int i = 0; i < maps.size(); i++) {
            for (int k = 0; k < maps.size(); k++) {
                if (i > k) {
                    curves[i][k] = MotionCurve.of(maps.get(i), maps.get(k));
                    curves[k][i] = curves[i][k].reversed();
                }
            }
        }
    }

    int size() {
        return maps.size();
    }

    DetailMap map(int index) {
        return maps.get(index);
    }

    MotionCurve curve(int first, int second) {
        return curves[first][second];
    }

    /** Whether two frames agree if the first lies an angle east of the second. */
    boolean agree(int first, int second, double deg) {
        MotionCurve curve = curves[first][second];
        MotionCurve.Peak peak = curve.peak();
        return peak.score() > FOUND
                && Math.abs(peak.deg() - deg) < TOLERANCE_DEG + TOLERANCE_PART * Math.abs(deg)
                && curve.near(deg, TOLERANCE_DEG) > AS_GOOD * peak.score();
    }

    /** Whether two frames show the same detail anywhere. */
    boolean found(int first, int second) {
        return curves[first][second].peak().score() > FOUND;
    }

    /**
     * The largest group of frames that agree with each other, directly or over others.
     *
     * @param eastDeg where the detail of each lies by its time
     */
    List<Integer> group(double[] eastDeg) {
        int[] group = new int[size()];
        for (int i = 0; i < group.length; i++) {
            group[i] = i;
        }
        for (int i = 0; i < group.length; i++) {
            for (int k = 0; k < i; k++) {
                if (agree(i, k, Disk.wrapDeg(eastDeg[i] - eastDeg[k]))) {
                    int old = group[i];
                    for (int j = 0; j < group.length; j++) {
                        group[j] = group[j] == old ? group[k] : group[j];
                    }
                }
            }
        }
        List<Integer> largest = List.of();
        for (int g = 0; g < group.length; g++) {
            List<Integer> members = new ArrayList<>();
            for (int i = 0; i < group.length; i++) {
                if (group[i] == g) {
                    members.add(i);
                }
            }
            largest = members.size() > largest.size() ? members : largest;
        }
        return largest;
    }

    /** Agreement of all pairs at their angles, in the mean. */
    double score(double[] eastDeg) {
        double sum = 0;
        int pairs = 0;
        for (int i = 0; i < size(); i++) {
            for (int k = 0; k < i; k++) {
                sum += curves[i][k].near(Disk.wrapDeg(eastDeg[i] - eastDeg[k]), TOLERANCE_DEG);
                pairs++;
            }
        }
        return pairs == 0 ? 0 : sum / pairs;
    }
}
