package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.session.MoonFit.Found;

/**
 * A companion that was found in the frames.
 *
 * @param companion on the course that the fits agree on
 * @param predicted its course before the fits
 * @param free its fit in each frame by itself; null where the frame does not hold it
 * @param held its fit in each frame on the common course; null likewise
 */
record MoonTrack(Companion companion, Companion.Course predicted, List<Found> free, List<Found> held) {
    /** No place is trusted better than so many pixels. */
    private static final double LEAST_SIGMA_PX = 0.05;

    /** Fits in which a companion shows less than this part of what is not smooth ground tell nothing about its place. */
    static final double PLAIN = 0.4;

    static final double LEAST_CONTRAST = 0.08;

    static boolean plain(Found found, boolean shadow) {
        return found != null && found.explained() > PLAIN && Math.abs(found.contrast(shadow)) > LEAST_CONTRAST;
    }

    /**
     * The track that free fits agree on.
     *
     * @param straight whether the course is a straight line through the places, else the predicted one, moved
     */
    static MoonTrack through(Companion companion, List<MoonFrame> frames, List<Found> free, boolean straight) {
        Companion settled = companion.on(
                straight ? line(companion, frames, free) : companion.course().movedBy(offset(companion, frames, free)));
        List<Found> held = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            held.add(free.get(i) == null ? null : new MoonFit(frames.get(i), settled, 0).held());
        }
        return new MoonTrack(settled, companion.course(), free, held);
    }

    private static double weight(MoonFrame frame, Found found) {
        double sigma = Math.hypot(LEAST_SIGMA_PX, found.sigmaPx()) / frame.radiusPx();
        return 1 / (sigma * sigma);
    }

    private static SkyPoint offset(Companion companion, List<MoonFrame> frames, List<Found> free) {
        SkyPoint sum = new SkyPoint(0, 0);
        double weights = 0;
        for (int i = 0; i < frames.size(); i++) {
            if (plain(free.get(i), companion.shadow())) {
                double weight = weight(frames.get(i), free.get(i));
                SkyPoint off =
                        free.get(i).place().minus(companion.at(frames.get(i).mid()));
                sum = sum.plus(off.times(weight));
                weights += weight;
            }
        }
        return weights == 0 ? sum : sum.times(1 / weights);
    }

    /** The course moved, and its speed mended: a line through what the places differ from it by. */
    private static Companion.Course line(Companion companion, List<MoonFrame> frames, List<Found> free) {
        double w = 0;
        double wt = 0;
        double wtt = 0;
        SkyPoint s = new SkyPoint(0, 0);
        SkyPoint st = new SkyPoint(0, 0);
        var start = frames.get(0).mid();
        for (int i = 0; i < frames.size(); i++) {
            if (plain(free.get(i), companion.shadow())) {
                double weight = weight(frames.get(i), free.get(i));
                double t = secondsSince(start, frames.get(i).mid());
                SkyPoint off =
                        free.get(i).place().minus(companion.at(frames.get(i).mid()));
                w += weight;
                wt += weight * t;
                wtt += weight * t * t;
                s = s.plus(off.times(weight));
                st = st.plus(off.times(weight * t));
            }
        }
        double det = w * wtt - wt * wt;
        if (w == 0) {
            return companion.course();
        }
        if (det <= 1e-9 * w * w) {
            return companion.course().movedBy(s.times(1 / w));
        }
        SkyPoint at = s.times(wtt).minus(st.times(wt)).times(1 / det);
        SkyPoint rate = st.times(w).minus(s.times(wt)).times(1 / det);
        Companion.Course more = Companion.Course.straight(start, at, rate);
        return utc -> companion.at(utc).plus(more.at(utc));
    }

    static double secondsSince(java.time.Instant from, java.time.Instant to) {
        return java.time.Duration.between(from, to).toMillis() / 1000.0;
    }
}
