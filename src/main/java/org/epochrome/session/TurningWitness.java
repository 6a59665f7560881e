package org.epochrome.session;

import java.util.ArrayList;
import java.util.List;
import org.epochrome.disk.View;
import org.epochrome.session.MoonFit.Found;
import org.epochrome.turn.Rotation;

/**
 * Tells whether a feature follows its own course or turns with the globe.
 *
 * @param epoch how the globe stands at the epoch
 * @param rotations how far it turns from there to each frame
 */
record TurningWitness(View epoch, List<Rotation> rotations) {
    /** Turning must explain places so many times better than the course, for a marking to be taken for one. */
    private static final double CLEARLY = 1.5;
    /** Scatter about the course below which nothing could be told. */
    private static final double TOO_LITTLE_PX = 0.25;

    /** Rms distance of the places that are plain from the course, pixels. */
    double offPx(Companion companion, List<MoonFrame> frames, List<Found> places) {
        List<SkyPoint> off = new ArrayList<>();
        double radius = 0;
        for (int i = 0; i < frames.size(); i++) {
            if (MoonTrack.plain(places.get(i), companion.shadow())) {
                off.add(places.get(i).place().minus(companion.at(frames.get(i).mid())));
                radius = frames.get(i).radiusPx();
            }
        }
        return radius * scatter(off);
    }

    /** Whether the plain places turn with the globe rather than follow the course. */
    boolean turns(Companion companion, List<MoonFrame> frames, List<Found> places) {
        List<SkyPoint> carried = new ArrayList<>();
        double radius = 0;
        for (int i = 0; i < frames.size(); i++) {
            if (MoonTrack.plain(places.get(i), companion.shadow())) {
                carried.add(atEpoch(
                        frames.get(i).view(), rotations.get(i), places.get(i).place()));
                radius = frames.get(i).radiusPx();
            }
        }
        if (carried.stream().anyMatch(p -> Double.isNaN(p.side()))) {
            return false;
        }
        double turning = radius * scatter(carried);
        return turning < CLEARLY * Math.max(TOO_LITTLE_PX, offPx(companion, frames, places));
    }

    private SkyPoint atEpoch(View view, Rotation rotation, SkyPoint place) {
        return carried(view, epoch, latitude -> -rotation.backRad(latitude), place.pole(), place.side());
    }

    /** Where a point of the surface that is seen in one view lies in another; NaN off the disk. */
    static SkyPoint carried(View from, View to, Rotation rotation, double pole, double side) {
        double depth = from.depth(pole, side);
        double x = from.bodyX(pole, depth);
        double z = from.bodyZ(pole, depth);
        double back = rotation.backRad(from.graphicLatitude(x, side, z));
        double then = x * Math.cos(back) - side * Math.sin(back);
        return new SkyPoint(x * Math.sin(back) + side * Math.cos(back), to.poleOf(then, z));
    }

    private static double scatter(List<SkyPoint> points) {
        SkyPoint sum = new SkyPoint(0, 0);
        for (SkyPoint p : points) {
            sum = sum.plus(p);
        }
        SkyPoint mean = sum.times(1.0 / Math.max(1, points.size()));
        double squares = 0;
        for (SkyPoint p : points) {
            double off = p.minus(mean).length();
            squares += off * off;
        }
        return Math.sqrt(squares / Math.max(1, points.size()));
    }
}
